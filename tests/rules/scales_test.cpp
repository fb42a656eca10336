#include "catch.hpp"
#include "fingerturn/analysis.hpp"
#include "rules/made_lines.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

/// The twelve major scales with the fingers of the handbooks (common practice, no source; written
/// from memory), up and down over two octaves. What the arm does in them is our model.
namespace fingerturn {
namespace {

struct Scale {
  std::string_view key;
  int lowest;              ///< its first key, as a MIDI note number
  std::string_view right;  ///< the fingers of its first seven notes
  std::string_view left;
  char highest_right;  ///< the finger at the turn
  char lowest_left;    ///< the finger of the first note, where it is another than in between
};

constexpr std::array<Scale, 12> kScales{{
    {"C", 48, "1231234", "1432132", '5', '5'},
    {"G", 55, "1231234", "1432132", '5', '5'},
    {"D", 50, "1231234", "1432132", '5', '5'},
    {"A", 57, "1231234", "1432132", '5', '5'},
    {"E", 52, "1231234", "1432132", '5', '5'},
    {"B", 59, "1231234", "1321432", '5', '4'},
    {"F sharp", 54, "2341231", "4321321", '2', '4'},
    {"D flat", 49, "2312341", "3214321", '2', '3'},
    {"A flat", 56, "3412312", "3214321", '3', '3'},
    {"E flat", 51, "3123412", "3214321", '3', '3'},
    {"B flat", 58, "4123123", "3214321", '4', '3'},
    {"F", 53, "1234123", "1432132", '4', '5'},
}};

constexpr std::size_t kNotesInOctave = 7;
constexpr std::array<int, kNotesInOctave> kMajor{0, 2, 4, 5, 7, 9, 11};

int key_of(const Scale& scale, std::size_t degree) {
  const int octave = static_cast<int>(degree / kNotesInOctave);
  return scale.lowest + 12 * octave + kMajor.at(degree % kNotesInOctave);
}

int finger_of(const Scale& scale, Hand hand, std::size_t degree) {
  if (hand == Hand::right && degree == 2 * kNotesInOctave) return scale.highest_right - '0';
  if (hand == Hand::left && degree == 0) return scale.lowest_left - '0';
  const std::string_view fingers = hand == Hand::right ? scale.right : scale.left;
  return fingers.at(degree % kNotesInOctave) - '0';
}

Line line_of(const Scale& scale, Hand hand) {
  Line line;
  line.hand = hand;
  std::vector<std::size_t> degrees;
  for (std::size_t degree = 0; degree <= 2 * kNotesInOctave; ++degree) degrees.push_back(degree);
  for (std::size_t degree = 2 * kNotesInOctave; degree-- > 0;) degrees.push_back(degree);
  for (const std::size_t degree : degrees) {
    Event event;
    event.notes.push_back(note_on(key_of(scale, degree), finger_of(scale, hand, degree)));
    line.events.push_back(event);
  }
  return line;
}

template <typename Check>
void for_scales(const Check& check) {
  for (const Scale& scale : kScales) {
    for (const Hand hand : {Hand::right, Hand::left}) {
      const Line line = line_of(scale, hand);
      INFO(scale.key << " major, " << to_string(hand) << " hand\n" << notation_of(line));
      check(analyse(score_of({line})).passages.at(0).lines.at(0));
    }
  }
}

TEST_CASE("in scales the arm carries the hand where the thumb passes, and nowhere else",
          "[rules][arm][scales]") {
  for_scales([](const LineAnalysis& analysis) {
    std::size_t passings = 0;
    for (const EventAnalysis& entry : analysis.events) {
      const bool passes =
          entry.crossing == Crossing::thumb_under || entry.crossing == Crossing::finger_over_thumb;
      INFO("event " << entry.index << ", carry " << entry.carry.value());
      CHECK((entry.carry != 0) == passes);
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

TEST_CASE("scales with the fingers of the handbooks ask for no strain and no caution",
          "[rules][spans][scales]") {
  for_scales([](const LineAnalysis& analysis) {
    for (const Finding& finding : analysis.watch) {
      INFO(finding.message);
      CHECK(finding.level == Level::info);
      CHECK(finding.rule == "twist");
    }
  });
}

TEST_CASE("a thumb on a black key moves the hand in", "[rules][arm][scales]") {
  // The fingers of C major on E flat major: the thumb comes to stand on two black keys.
  const Scale clumsy{"E flat", 51, "1231234", "1432132", '5', '5'};
  const LineAnalysis analysis =
      analyse(score_of({line_of(clumsy, Hand::right)})).passages.at(0).lines.at(0);
  CHECK(analysis.totals.moves_in > 0);
  const std::ptrdiff_t on_black = std::count_if(
      analysis.events.begin(), analysis.events.end(),
      [](const EventAnalysis& entry) { return entry.in_out == InOut::in && entry.depth >= 1; });
  CHECK(on_black > 0);
}

}  // namespace
}  // namespace fingerturn
