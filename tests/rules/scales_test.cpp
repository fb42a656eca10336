#include "catch.hpp"
#include "fingerturn/analysis.hpp"
#include "rules/made_lines.hpp"
#include "scales/made_scales.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// The scales of seven notes with the fingers of the handbooks, up and down over two octaves. What
/// the arm does in them is our model.
namespace fingerturn {
namespace {

Line up_and_down(std::string_view name, Hand hand) {
  return scale_line(name, hand, 2, ScaleDirection::up_and_down);
}

template <typename Check>
void for_scales(const Check& check) {
  std::size_t scales = 0;
  for (const std::string& name : handbook_scale_names()) {
    if (!name.ends_with(" major") && !name.ends_with(" minor")) continue;
    ++scales;
    for (const Hand hand : {Hand::right, Hand::left}) {
      const Line line = up_and_down(name, hand);
      INFO(name << ", " << to_string(hand) << " hand\n" << notation_of(line));
      check(analyse(score_of({line})).passages.at(0).lines.at(0));
    }
  }
  CHECK(scales == 60);
}

/// A chord of a cadence above its keynote, in semitones, and the fingers of both hands from below.
struct CadenceChord {
  std::vector<int> keys;
  std::vector<Finger> right;
  std::vector<Finger> left;
};

using Cadence = std::vector<CadenceChord>;

/// Primary chords with the fingers of elementary methods, close (I, IV in its second inversion, V7
/// in its first without the fifth, I) and in inversions. Common practice, from memory.
std::vector<Cadence> cadences(bool major) {
  const int third = major ? 4 : 3;
  const int sixth = major ? 9 : 8;
  const CadenceChord tonic{{0, third, 7}, {1, 3, 5}, {5, 3, 1}};
  const CadenceChord first_inversion{{third, 7, 12}, {1, 2, 5}, {5, 3, 1}};
  const CadenceChord second_inversion{{7, 12, 12 + third}, {1, 3, 5}, {5, 2, 1}};
  const CadenceChord octave{{12, 12 + third, 19}, {1, 3, 5}, {5, 3, 1}};
  return {{tonic, {{0, 5, sixth}, {1, 3, 5}, {5, 2, 1}}, {{-1, 5, 7}, {1, 4, 5}, {5, 2, 1}}, tonic},
          {tonic, first_inversion, second_inversion, octave}};
}

Line line_of(const Cadence& cadence, Hand hand, int keynote) {
  Line line;
  line.hand = hand;
  for (const CadenceChord& chord : cadence) {
    Event event;
    for (std::size_t i = 0; i < chord.keys.size(); ++i) {
      Note note;
      note.pitch = pitch_with_sharps(keynote + chord.keys[i]);
      note.finger = (hand == Hand::right ? chord.right : chord.left)[i];
      event.notes.push_back(std::move(note));
    }
    line.events.push_back(std::move(event));
  }
  return line;
}

TEST_CASE("in scales the arm carries the hand where the thumb passes, else at most one key",
          "[rules][arm][scales]") {
  // The five-finger places of a black key and a white one lie half a key apart, and those of the
  // augmented second of a harmonic minor a whole one.
  constexpr double kLeastPassing = 1;
  constexpr double kMostElse = 1;
  for_scales([=](const LineAnalysis& analysis) {
    std::size_t passings = 0;
    for (const EventAnalysis& entry : analysis.events) {
      const bool passes =
          entry.crossing == Crossing::thumb_under || entry.crossing == Crossing::finger_over_thumb;
      INFO("event " << entry.index << ", carry " << entry.carry.value());
      const double carried = std::abs(entry.carry.value());
      CHECK((passes ? carried >= kLeastPassing : carried <= kMostElse));
      passings += passes ? 1 : 0;
    }
    CHECK(passings >= 6);
    CHECK(analysis.totals.crossings == passings);
  });
}

TEST_CASE("a scale makes one arc up and one down", "[rules][arm][scales]") {
  for_scales([](const LineAnalysis& analysis) { CHECK(analysis.totals.arcs == 2); });
}

TEST_CASE("scales with the thumb on white keys need no in and out", "[rules][arm][scales]") {
  for_scales([](const LineAnalysis& analysis) {
    CHECK(analysis.totals.moves_in == 0);
    CHECK(analysis.totals.moves_out == 0);
  });
}

TEST_CASE("no handbook scale or arpeggio draws a caution or a strain", "[rules][watch][scales]") {
  std::size_t lines = 0;
  for (const std::string& name : handbook_scale_names()) {
    for (const Hand hand : {Hand::right, Hand::left}) {
      for (int octaves = 1; octaves <= 4; ++octaves) {
        for (const ScaleDirection direction :
             {ScaleDirection::up, ScaleDirection::down, ScaleDirection::up_and_down}) {
          const Line line = scale_line(name, hand, octaves, direction);
          ++lines;
          const Analysis analysis = analyse(score_of({line}));
          for (const Finding& finding : analysis.passages.at(0).lines.at(0).watch) {
            INFO(name << ", " << to_string(hand) << " hand: " << finding.message);
            CHECK(finding.level == WatchLevel::info);
            CHECK(finding.rule != "leap");
          }
        }
      }
    }
  }
  CHECK(lines == handbook_scale_names().size() * 2 * 4 * 3);
}

TEST_CASE("no cadence draws a caution or a strain", "[rules][watch][scales]") {
  std::size_t chords = 0;
  for (int keynote = 48; keynote < 72; ++keynote) {
    for (const bool major : {true, false}) {
      for (const Cadence& cadence : cadences(major)) {
        for (const Hand hand : {Hand::right, Hand::left}) {
          const Line line = line_of(cadence, hand, keynote);
          const Analysis analysis = analyse(score_of({line}));
          chords += analysis.passages.at(0).lines.at(0).events.size();
          for (const Finding& finding : analysis.passages.at(0).lines.at(0).watch) {
            INFO(notation_of(line) << finding.message);
            CHECK(finding.level == WatchLevel::info);
          }
        }
      }
    }
  }
  CHECK(chords == std::size_t{24} * 2 * 2 * 2 * 4);
}

TEST_CASE("a thumb on a black key moves the hand in", "[rules][arm][scales]") {
  // The fingers of C major on E flat major: the thumb comes to stand on two black keys.
  Line clumsy = up_and_down("Eb major", Hand::right);
  const Line fingered = up_and_down("C major", Hand::right);
  for (std::size_t i = 0; i < clumsy.events.size(); ++i) {
    clumsy.events[i].notes[0].finger = fingered.events[i].notes[0].finger;
  }
  const LineAnalysis analysis = analyse(score_of({clumsy})).passages.at(0).lines.at(0);
  CHECK(analysis.totals.moves_in > 0);
  const std::ptrdiff_t on_black = std::count_if(
      analysis.events.begin(), analysis.events.end(),
      [](const EventAnalysis& entry) { return entry.in_out == InOut::in && entry.depth >= 1; });
  CHECK(on_black > 0);
}

}  // namespace
}  // namespace fingerturn
