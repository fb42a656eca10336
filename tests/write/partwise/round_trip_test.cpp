#include "catch.hpp"
#include "fingerturn/read.hpp"
#include "fingerturn/report.hpp"
#include "score/file_reading.hpp"
#include "score/ties.hpp"
#include "score/timeline.hpp"
#include "write/partwise/strokes.hpp"
#include "write/random_score.hpp"

#include <algorithm>
#include <cstdint>
#include <filesystem>
#include <string>
#include <utility>
#include <vector>

/// What is written as a new MusicXML score reads back as the same music.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

constexpr std::uint64_t kSeeds = 500;

Score read_back(const std::string& written) {
  const Source source("written.musicxml", written);
  const ReadResult again = read_musicxml(source);
  CAPTURE(render(source, again.diagnostics));
  REQUIRE(again.diagnostics.errors == 0);
  REQUIRE(again.diagnostics.warnings == 0);
  REQUIRE(again.score.passages.size() == 1);
  return again.score;
}

/// Where a passage says no key, the one that needs the fewest signs is written.
void forget_chosen_key(const Passage& of, Passage& again) {
  if (of.keys.empty()) again.keys.clear();
}

void check_same(const Passage& passage) {
  const std::string written = write_musicxml(Score{{passage}});
  CAPTURE(write_passage(Score{{passage}}));
  Passage again = read_back(written).passages[0];
  forget_chosen_key(passage, again);
  CHECK(signatures_of(again) == signatures_of(passage));
  for (const Line& line : passage.lines) {
    const Line* const found = line_of_hand(again, line.hand);
    CHECK((found != nullptr || strokes_of(line).empty()));
    if (found == nullptr) continue;
    REQUIRE(strokes_of(*found) == strokes_of(line));
    if (passage.lines.size() == 1) CHECK(bar_signs_of(*found) == bar_signs_of(line));
  }
  const Score marked{{again}};
  CHECK(without_own_marks(write_musicxml(AnalysedScore("a", {{passage}}), {})) ==
        without_own_marks(written));
}

/// A value for every note: scores made by chance leave some open.
void add_values(Passage& passage, Chance& chance) {
  for (Line& line : passage.lines) {
    for (Event& event : line.events) {
      if (!event.duration) event.duration = reduced(event.grace ? 0 : 1, 1 << chance.below(4));
    }
  }
  set_onsets(passage);
}

Event rest_of(std::int32_t bar, Fraction duration) {
  Event rest;
  rest.bar = bar;
  rest.duration = duration;
  return rest;
}

/// A hand that skips bars in which the other plays rests there, and ties end.
void rest_in_skipped_bars(Line& line) {
  std::vector<Event> events;
  for (Event& event : line.events) {
    if (!events.empty() && event.bar > events.back().bar + 1) {
      events.push_back(rest_of(events.back().bar + 1, {1, 8}));
    }
    events.push_back(std::move(event));
  }
  line.events = std::move(events);
  line.bar_lines.clear();
}

/// The same at the end of bars that the other hand fills.
void rest_in_short_bars(Line& line) {
  std::vector<Event> events;
  for (Event& event : line.events) {
    if (!events.empty() && event.bar <= events.back().bar + 1) {
      const Fraction end = *sum(*events.back().onset, *events.back().duration);
      const Fraction gap = *sum(*event.onset, *product(end, {-1, 1}));
      if (gap.numerator > 0) events.push_back(rest_of(events.back().bar, gap));
    }
    events.push_back(std::move(event));
  }
  line.events = std::move(events);
}

void rest_where_silent(Passage& passage) {
  if (passage.lines.size() < 2) return;
  for (Line& line : passage.lines) rest_in_skipped_bars(line);
  set_onsets(passage);
  for (Line& line : passage.lines) rest_in_short_bars(line);
  set_onsets(passage);
}

/// Two hands that each strike one key at a time: of wide chords a reader gives the other hand some.
/// No tie leads to nothing, of which a reader warns, and no tempo is beyond all that are read.
void make_readable(Passage& passage) {
  std::erase_if(passage.tempos, [](const FromBar<Tempo>& tempo) {
    return !is_plausible_tempo(tempo.value.quarters_per_minute());
  });
  rest_where_silent(passage);
  for (Line& line : passage.lines) {
    for (Event& event : line.events) {
      if (passage.lines.size() > 1 && event.notes.size() > 1) event.notes.resize(1);
    }
    drop_ties_to_nothing(line);
    resolve_ties(line);
  }
}

}  // namespace

TEST_CASE("passages made by chance are written as MusicXML and read back") {
  std::size_t checked = 0;
  for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
    Chance chance(seed);
    for (Passage& passage : random_score(seed).passages) {
      if (passage.lines.empty()) continue;
      CAPTURE(seed);
      add_values(passage, chance);
      make_readable(passage);
      check_same(passage);
      ++checked;
    }
  }
  CHECK(checked > kSeeds);
}

TEST_CASE("the demo passages are written as MusicXML and read back") {
  namespace files = std::filesystem;
  std::size_t checked = 0;
  for (const auto& path : files_below(files::path(FINGERTURN_SOURCE_DIR) / "demo", ".passage")) {
    CAPTURE(path);
    const ReadResult read = read_notation(Source("a", text_of_file(path)));
    REQUIRE(read.ok());
    for (const Passage& passage : read.score.passages) check_same(passage);
    ++checked;
  }
  CHECK(checked == 6);
}
