#include "write/page/picture_legend.hpp"

#include "write/shared/used.hpp"

#include <array>
#include <cstdint>
#include <utility>

namespace fingerturn {
namespace {

constexpr std::array<std::string_view, 5> kRotationWords{
    "preparatory (prep), with corners: the first note of a gesture, with a swing of its own "
    "before it",
    "single, one ring: the side changes; the note before has prepared it, and one swing plays it",
    "double, two rings: the side stays; the forearm first swings back (dashed), then plays",
    "level, over both sides: both sides of the hand go down together, without a turn",
    "undetermined (?), dotted: a finger is missing, so nothing is said of the swing"};
constexpr std::array<std::string_view, 3> kCrossingWords{
    "a bowl below the band: the thumb passes under",
    "an arch below the band: the finger passes over the thumb",
    "bowl and arch below the band: one finger passes another"};

constexpr double kLeftMark = 20;
constexpr double kMiddleMark = 48;
constexpr double kRightMark = 66;

Mark mark_at(double x, std::string finger, Rotation rotation, std::optional<Direction> play) {
  Mark mark;
  mark.x = x;
  mark.fingers = {std::move(finger)};
  mark.rotation = rotation;
  mark.play = play;
  return mark;
}

/// Two notes, the first played to the right.
std::vector<Mark> pair_of(std::string finger, Rotation rotation, Direction play) {
  return {mark_at(kLeftMark, "2", Rotation::single_rotation, Direction::right),
          mark_at(kRightMark, std::move(finger), rotation, play)};
}

std::vector<Mark> marks_for(Rotation rotation) {
  switch (rotation) {
    case Rotation::single_rotation:
      return pair_of("1", rotation, Direction::left);
    case Rotation::double_rotation: {
      std::vector<Mark> marks = pair_of("3", rotation, Direction::right);
      marks.back().prepare = Direction::left;
      return marks;
    }
    case Rotation::preparatory: {
      Mark mark = mark_at(kMiddleMark, "1", rotation, Direction::left);
      mark.prepare = Direction::right;
      return {std::move(mark)};
    }
    case Rotation::level: {
      Mark mark = mark_at(kMiddleMark, "1", rotation, std::nullopt);
      mark.fingers = {"1", "3", "5"};
      return {std::move(mark)};
    }
    case Rotation::undetermined:
      break;
  }
  return {mark_at(kMiddleMark, "?", rotation, std::nullopt)};
}

std::vector<Mark> marks_for(Crossing crossing) {
  const bool under = crossing == Crossing::thumb_under;
  std::vector<Mark> marks{
      mark_at(kLeftMark, crossing == Crossing::finger_over_thumb ? "1" : "3",
              Rotation::single_rotation, under ? Direction::right : Direction::left),
      mark_at(kRightMark, under ? "1" : "4", Rotation::single_rotation,
              under ? Direction::left : Direction::right)};
  marks.back().crossing = crossing;
  return marks;
}

Used used_in(const AnalysedScore& analysed) {
  Used used;
  for (const PassageAnalysis& passage : analysed.found().passages) {
    for (const LineAnalysis& line : passage.lines) {
      for (const EventAnalysis& found : line.events) used.see(found);
    }
  }
  return used;
}

LegendSample sample_of(std::vector<Mark> marks, std::string_view words) {
  LegendSample sample;
  sample.marks = std::move(marks);
  sample.words = words;
  return sample;
}

}  // namespace

std::vector<LegendSample> picture_legend(const AnalysedScore& analysed) {
  const Used used = used_in(analysed);
  std::vector<LegendSample> samples;
  for (std::size_t i = 0; i < kRotationWords.size(); ++i) {
    if (!used.has(kRotations[i])) continue;
    samples.push_back(sample_of(marks_for(kRotations[i]), kRotationWords[i]));
  }
  for (std::size_t i = 0; i < kCrossingWords.size(); ++i) {
    if (!used.has(kCrossings[i])) continue;
    samples.push_back(sample_of(marks_for(kCrossings[i]), kCrossingWords[i]));
    samples.back().lanes.crossings = true;
  }
  return samples;
}

std::vector<std::string_view> picture_notes(const AnalysedScore& analysed) {
  const Used used = used_in(analysed);
  std::vector<std::string_view> notes{
      "The line is the forearm's swing through time: up is to the right, down to the left, for "
      "both hands. A full stroke plays, a dashed one prepares, a small ring is where the forearm "
      "turns back. The number is the finger. Each shaded band is one gesture.",
      "Toward the fifth finger the forearm supinates, toward the thumb it pronates."};
  if (used.carries) {
    notes.emplace_back(
        "hand: where the arm carries the hand along the keyboard, up to the right; broken where a "
        "finger is missing (our model)");
  }
  if (used.depths) {
    notes.emplace_back(
        "depth: how far in between the black keys the hand is, up is further in (our model)");
  }
  return notes;
}

}  // namespace fingerturn
