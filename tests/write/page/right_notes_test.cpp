#include "catch.hpp"
#include "write/page/engraved.hpp"
#include "write/page/music_to_set.hpp"
#include "write/page/read_back.hpp"
#include "write/random_score.hpp"

#include <algorithm>
#include <bit>
#include <cstdint>
#include <iterator>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

/// Who reads a page plays the notes of the score: its pitches and values, read from the ink alone.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

/// A length as its halvings of a whole note and dots, tuplets taken out; empty where several tied
/// notes are needed.
std::string written_value(Fraction length) {
  const std::int64_t odd =
      length.denominator >> std::countr_zero(static_cast<std::uint64_t>(length.denominator));
  const auto normal = static_cast<std::int64_t>(std::bit_floor(static_cast<std::uint64_t>(odd)));
  const std::optional<Fraction> plain = product(length, {odd, normal});
  if (!plain) return {};
  for (int dots = 0; dots <= 2; ++dots) {
    const std::int64_t units = (std::int64_t{2} << dots) - 1;
    const std::optional<Fraction> unit = product(*plain, {std::int64_t{1} << dots, units});
    if (!unit || (unit->numerator != 1 && *unit != Fraction{2, 1})) continue;
    const int halvings =
        unit->numerator == 2 ? -1 : std::countr_zero(static_cast<std::uint64_t>(unit->denominator));
    return std::to_string(halvings) + std::string(static_cast<std::size_t>(dots), '.');
  }
  return {};
}

struct BarExpected {
  std::multiset<std::string> pitches;
  std::set<std::string> values;  ///< what a head of the bar may say
};

std::map<std::int32_t, BarExpected> expected_of(const Line& line) {
  std::map<std::int32_t, BarExpected> bars;
  for (std::size_t i = 0; i < line.events.size(); ++i) {
    const Event& event = line.events[i];
    BarExpected& bar = bars[event.bar];
    std::size_t last = i;
    while (line.events[last].rolls_on && last + 1 < line.events.size()) ++last;
    for (const Note& note : event.notes) {
      if (note.held) continue;
      bar.pitches.insert(to_string(note.pitch));
      const Fraction length = note.lasts.value_or(line.events[last].duration.value_or(Fraction{}));
      bar.values.insert(to_string(note.pitch) + " " + written_value(length));
    }
  }
  return bars;
}

std::string difference(const BarRead& read, const BarExpected& expected) {
  std::string words;
  std::vector<std::string> more;
  std::ranges::set_difference(read.pitches, expected.pitches, std::back_inserter(more));
  for (const std::string& pitch : more) words += " +" + pitch;
  std::vector<std::string> missing;
  std::ranges::set_difference(expected.pitches, read.pitches, std::back_inserter(missing));
  for (const std::string& pitch : missing) words += " -" + pitch;
  for (const std::string& value : read.values) {
    if (!expected.values.contains(value)) words += " " + value + "?";
  }
  return words;
}

/// The bars of a passage in which something else is read than is written, in words.
std::string wrong_bars(const AnalysedPassage& passage, double width) {
  const PageWatchList list = watch_list_of(passage);
  std::string wrong;
  for (const MusicPart& part : music_parts(passage, list)) {
    std::vector<System> systems;
    SystemMaker maker(passage, part.lines, part.watch, width);
    while (std::optional<System> system = maker.next()) systems.push_back(std::move(*system));
    const auto read = read_back(systems, part.lines.size());
    const std::vector<std::int32_t> bars = bars_of(passage.written());
    for (std::size_t staff = 0; staff < part.lines.size(); ++staff) {
      auto expected = expected_of(part.lines[staff].written());
      if (part.lines.size() > 1 && read[staff].size() != bars.size()) {
        return std::to_string(read[staff].size()) + " bars are read\n";
      }
      std::size_t number = 0;
      for (const std::int32_t bar : bars) {
        if (part.lines.size() == 1 && passage.size() > 1 && !expected.contains(bar)) continue;
        if (number == read[staff].size()) return wrong + "bars are missing\n";
        const BarRead& found = read[staff][number++];
        const std::string differing = difference(found, expected[bar]);
        if (differing.empty()) continue;
        wrong +=
            "staff " + std::to_string(staff) + " bar " + std::to_string(bar) + differing + "\n";
      }
    }
  }
  return wrong;
}

}  // namespace

TEST_CASE("the notes and values that are read from a page are those of the score",
          "[page][right-notes]") {
  std::size_t bars = 0;
  std::size_t wrong = 0;
  std::string where;
  for (const MusicToSet& piece : music_to_set()) {
    for (const AnalysedPassage passage : piece.music) {
      bars += bars_of(passage.written()).size() * passage.size();
      const std::string lines = wrong_bars(passage, kSheetWidth);
      wrong += static_cast<std::size_t>(std::ranges::count(lines, '\n'));
      if (!lines.empty()) where += piece.name + "\n" + lines;
      if (piece.name.ends_with(".passage")) CHECK(lines == "");
    }
  }
  // What is left is what a reader by rules takes for another voice's: ties, dots and stems that
  // stand side by side where voices meet.
  CAPTURE(where);
  REQUIRE(bars > 0);
  CHECK(100 * wrong < bars);
}
