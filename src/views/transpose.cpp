#include "fingerturn/transpose.hpp"

#include "score/line_of_fifths.hpp"
#include "score/timeline.hpp"
#include "text/words.hpp"
#include "views/interval_names.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <iterator>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace fingerturn {
namespace {

constexpr int kSemitonesInOctave = 12;
constexpr int kLettersInOctave = 7;
/// A distance on the line of fifths, and octaves beside it.
struct Move {
  int fifths = 0;
  int semitones = 0;
};

Move move_of(const Interval& interval) {
  // A fifth is 7 semitones and 4 letters, an octave 12 and 7.
  return {7 * interval.semitones - 12 * interval.letters, interval.semitones};
}

Interval interval_of(const Move& move) {
  const int octaves = (move.semitones - 7 * move.fifths) / kSemitonesInOctave;
  return {4 * move.fifths + kLettersInOctave * octaves, move.semitones};
}

/// The other spelling where one would have more signs than are written.
int within(int fifths, int lowest, int highest) {
  while (fifths < lowest) fifths += kEnharmonicFifths;
  while (fifths > highest) fifths -= kEnharmonicFifths;
  return fifths;
}

int key_within(int fifths) { return within(fifths, -kMostSigns, kMostSigns); }

/// The key signature at the beginning; none where none is written.
std::optional<KeySignature> first_key(const Passage& passage) {
  return passage.keys.empty() ? std::nullopt : std::optional(passage.keys.front().value);
}

/// The move by semitones that leads to the key with the fewest signs, of two equal ones the one
/// with flats.
Move move_by(int semitones, const Passage& passage) {
  const int key = first_key(passage).value_or(KeySignature{}).fifths;
  std::optional<int> best;
  for (int fifths = -2 * kEnharmonicFifths; fifths <= 2 * kEnharmonicFifths; ++fifths) {
    if ((7 * fifths - semitones) % kSemitonesInOctave != 0) continue;
    const bool better = !best || std::abs(key + fifths) < std::abs(key + *best);
    if (better) best = fifths;
  }
  return {*best, semitones};
}

/// None where no key signature says what the tonic is.
std::optional<Move> move_to(const Pitch& tonic, const Passage& passage) {
  constexpr int kFifthsToMinorTonic = 3;
  const std::optional<KeySignature> key = first_key(passage);
  if (!key) return std::nullopt;
  const int from = key->fifths + (key->mode == Mode::minor ? kFifthsToMinorTonic : 0);
  const int fifths = fifths_of(tonic.step, tonic.alter) - from;
  int semitones = semitones_above_c(fifths);
  if (2 * semitones > kSemitonesInOctave) semitones -= kSemitonesInOctave;
  return Move{fifths, semitones};
}

class Mover {
 public:
  Mover(Passage passage, Move move) : passage_(std::move(passage)), move_(move) {}

  /// Why it cannot be moved; empty where it is.
  std::string move() {
    const Passage before = passage_;
    for (Line& line : passage_.lines) {
      for (Event& event : line.events) {
        const int fifths = fifths_in_bar(before, event.bar);
        for (Note& note : event.notes) {
          const Pitch moved = moved_pitch(note.pitch, fifths);
          if (!on_the_piano(moved)) {
            return fmt::format("bar {}, {} hand: {} would become {}, which is not on the piano",
                               event.bar, to_string(line.hand), to_string(note.pitch),
                               to_string(moved));
          }
          note.pitch = moved;
        }
      }
    }
    for (FromBar<KeySignature>& key : passage_.keys) {
      key.value.fifths = static_cast<std::int8_t>(key_within(key.value.fifths + move_.fifths));
    }
    add_words(before);
    return {};
  }

  Passage take() { return std::move(passage_); }

 private:
  /// Each key that is written is spelled with no more than seven signs.
  [[nodiscard]] int fifths_in_bar(const Passage& before, std::int32_t bar) const {
    if (before.keys.empty()) return move_.fifths;
    const int key = key_in_bar(before, bar).fifths;
    return key_within(key + move_.fifths) - key;
  }

  [[nodiscard]] Pitch moved_pitch(const Pitch& pitch, int fifths) const {
    constexpr int kDoubleFlatF = -15;
    constexpr int kDoubleSharpB = 19;
    const int place =
        within(fifths_of(pitch.step, pitch.alter) + fifths, kDoubleFlatF, kDoubleSharpB);
    const int key = midi_number(pitch) + move_.semitones;
    Pitch moved = pitch_at(place, pitch.octave);
    moved.octave =
        static_cast<std::int8_t>(moved.octave + (key - midi_number(moved)) / kSemitonesInOctave);
    return moved;
  }

  void add_words(const Passage& before) {
    if (move_.semitones == 0 && move_.fifths == 0) return;
    const std::string words = to_string(interval_of(move_));
    passage_.title += passage_.title.empty() ? words : ", " + words;
    std::vector<std::string> bars;
    for (std::size_t i = 0; i < before.lines.size(); ++i) {
      const std::vector<Event>& events = before.lines[i].events;
      for (std::size_t at = 0; at < events.size(); ++at) {
        if (!brings_thumb_to_black(events[at], passage_.lines[i].events[at])) continue;
        std::string bar = std::to_string(events[at].bar);
        if (std::ranges::find(bars, bar) == bars.end()) bars.push_back(std::move(bar));
      }
    }
    if (bars.empty()) return;
    passage_.remarks.push_back(fmt::format(
        "Moved {}, with the fingers that it had, the thumb comes to black keys in bar{} "
        "{}: finger --refinger chooses anew.",
        words, bars.size() == 1 ? "" : "s", enumerated(bars)));
  }

  static bool brings_thumb_to_black(const Event& before, const Event& after) {
    for (std::size_t i = 0; i < before.notes.size(); ++i) {
      const Note& note = after.notes[i];
      const auto colour = [](const Note& of) { return key_colour(midi_number(of.pitch)); };
      if (!note.held && note.finger == kThumb && colour(note) == KeyColour::black &&
          colour(before.notes[i]) == KeyColour::white) {
        return true;
      }
    }
    return false;
  }

  Passage passage_;
  Move move_;
};

std::optional<Move> move_of(const Transposition& by, const Passage& passage) {
  if (by.interval) return move_of(*by.interval);
  if (by.semitones) return move_by(*by.semitones, passage);
  return move_to(*by.tonic, passage);
}

std::string quality_of(int letters, int semitones) {
  const int over = semitones - kSemitonesOfInterval.at(static_cast<std::size_t>(letters));
  if (is_perfect_interval(letters)) {
    return over == 0 ? "perfect" : over == 1 ? "augmented" : over == -1 ? "diminished" : "";
  }
  return over == 0    ? "major"
         : over == -1 ? "minor"
         : over == 1  ? "augmented"
         : over == -2 ? "diminished"
                      : "";
}

}  // namespace

Transposed transpose(const Score& score, const Transposition& by) {
  Score moved;
  for (const Passage& passage : score.passages) {
    const std::optional<Move> move = move_of(by, passage);
    if (!move) {
      return {score,
              "no key signature is written, so it is not known which way leads to another key; say "
              "up or down and an interval"};
    }
    Mover mover(passage, *move);
    if (std::string problem = mover.move(); !problem.empty()) return {score, std::move(problem)};
    moved.passages.push_back(mover.take());
  }
  return {std::move(moved), {}};
}

Transposed in_all_keys(const Score& score) {
  constexpr int kLowest = -5;
  Score all;
  for (int semitones = kLowest; semitones < kLowest + kSemitonesInOctave; ++semitones) {
    Transposed moved = transpose(score, {.semitones = semitones});
    if (!moved.problem.empty()) return moved;
    std::ranges::move(moved.score.passages, std::back_inserter(all.passages));
  }
  return {std::move(all), {}};
}

std::string to_string(const Interval& interval) {
  const std::string_view way = interval.semitones < 0 || interval.letters < 0 ? "down" : "up";
  const int letters = std::abs(interval.letters);
  const int semitones = std::abs(interval.semitones);
  if (letters == 2 * kLettersInOctave && semitones == 2 * kSemitonesInOctave) {
    return fmt::format("{} two octaves", way);
  }
  const bool same_way = (interval.letters < 0) == (interval.semitones < 0);
  const std::string quality =
      letters <= kLettersInOctave && same_way ? quality_of(letters, semitones) : std::string();
  if (quality.empty()) {
    return fmt::format("{} {} semitone{}", way, semitones, semitones == 1 ? "" : "s");
  }
  const std::string_view number = kIntervalNumbers.at(static_cast<std::size_t>(letters));
  if (letters == kLettersInOctave && quality == "perfect") return fmt::format("{} an octave", way);
  return fmt::format("{} {} {} {}", way, quality == "augmented" ? "an" : "a", quality, number);
}

}  // namespace fingerturn
