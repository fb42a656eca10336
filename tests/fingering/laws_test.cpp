#include "catch.hpp"
#include "fingering/figures.hpp"
#include "fingering/made_tasks.hpp"
#include "fingerturn/fingering.hpp"
#include "fingerturn/read.hpp"
#include "hand/misplaced_finger.hpp"
#include "rules/made_lines.hpp"
#include "rules/random_passage.hpp"

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

/// What must hold of every suggestion.
namespace fingerturn {
namespace {

template <typename Check>
void for_lines_by_chance(const Check& check) {
  const std::uint64_t seed = seed_of_this_run();
  INFO("repeat with " << kSeedVariable << "=" << seed);
  Chance chance(seed);
  for (int i = 0; i < 120; ++i) {
    for (const Hand hand : {Hand::right, Hand::left}) {
      Line line = random_line(chance, hand, 60);
      check(line);
      check(without_fingers(std::move(line)));
    }
  }
}

constexpr std::size_t kMostFingers = 5;

/// A finger that was given stays, unless it is probably meant for another note of its chord.
void require_given_kept(const Note& before, const Note& after, bool misplaced) {
  if (!misplaced) {
    REQUIRE(after == before);
    return;
  }
  REQUIRE(after.set_aside == before.finger);
  REQUIRE(after.suggested);
  REQUIRE(after.changes_to.empty());
}

void require_kept(const Note& before, const Note& after, bool can_be_taken) {
  REQUIRE(after.suggested == after.finger.has_value());
  if (can_be_taken) REQUIRE(after.finger.has_value() != before.held);
  Note taken_back = after;
  taken_back.finger.reset();
  taken_back.suggested = before.suggested;
  REQUIRE(taken_back == before);
}

/// How many pairs of struck notes no hand takes with these fingers.
int impractical(const Event& event, Hand hand, const std::vector<Finger>& fingers) {
  std::vector<int> keys;
  for (const Note& note : event.notes) {
    if (!note.held) keys.push_back(midi_number(note.pitch));
  }
  int count = 0;
  for (std::size_t i = 0; i < keys.size(); ++i) {
    for (std::size_t j = i + 1; j < keys.size(); ++j) {
      if (fingers[i] == fingers[j]) {
        count += fingers[i] == kThumb && keys[j] - keys[i] <= 2 ? 0 : 1;
        continue;
      }
      const FingerSpans spans = spans_of(fingers[i], fingers[j], std::nullopt);
      const int span = span_between(hand, fingers[i], keys[i], fingers[j], keys[j]);
      count += span < spans.least_practical || span > spans.widest_practical ? 1 : 0;
    }
  }
  return count;
}

/// Whether the fingers rise toward the fifth's side; only the thumb may take two keys, neighbours.
bool rise(const Event& event, Hand hand, const std::vector<Finger>& fingers) {
  const auto width = [&event](std::size_t i) {
    return midi_number(event.notes[i + 1].pitch) - midi_number(event.notes[i].pitch);
  };
  for (std::size_t i = 0; i + 1 < fingers.size(); ++i) {
    const bool right = hand == Hand::right;
    const Finger near = right ? fingers[i] : fingers[i + 1];
    const Finger far = right ? fingers[i + 1] : fingers[i];
    const bool outermost = right ? i == 0 : i + 2 == fingers.size();
    const bool thumb_on_two = outermost && near == kThumb && far == kThumb && width(i) <= 2;
    if (near >= far && !thumb_on_two) return false;
  }
  return true;
}

/// The fewest impractical pairs over all fingers that keep the given ones and rise; all notes of
/// the event are struck.
int fewest_impractical(const Event& event, Hand hand) {
  std::vector<Finger> given;
  for (const Note& note : event.notes) {
    if (!note.held) given.push_back(note.finger.value_or(0));
  }
  int fewest = 1000;
  Sequences sequences(5, given.size());
  do {
    std::vector<Finger> fingers;
    bool keeps = true;
    for (std::size_t i = 0; i < given.size(); ++i) {
      fingers.push_back(static_cast<Finger>(sequences[i] + 1));
      keeps &= given[i] == 0 || given[i] == fingers[i];
    }
    if (keeps && rise(event, hand, fingers))
      fewest = std::min(fewest, impractical(event, hand, fingers));
  } while (sequences.next());
  return fewest;
}

/// Fingers already on the keys leave fewer for the rest, so events with held notes are left out.
void require_possible(const Line& line, const Line& complete, std::size_t at) {
  const Event& event = line.events[at];
  if (event.struck_count() < 2 || event.struck_count() < event.notes.size()) return;
  if (event.struck_count() > kMostFingers) return;
  const std::vector<Finger> given = struck_fingers(event);
  const bool none_given = std::all_of(given.begin(), given.end(), [](Finger f) { return f == 0; });
  const int found = impractical(event, line.hand, struck_fingers(complete.events[at]));
  const int fewest = fewest_impractical(event, line.hand);
  INFO(notation_of(complete) << "event " << at);
  if (fewest == 0) REQUIRE(found == 0);
  if (none_given) REQUIRE(found <= fewest);
}

/// A finger that comes to be given binds the keys that sound on as well.
bool has_held_keys(const Line& line) {
  return std::ranges::any_of(line.events, [](const Event& event) {
    return std::ranges::any_of(event.notes, [](const Note& note) { return note.held; });
  });
}

void require_in_order(const Line& line, const std::vector<LineFingering>& found) {
  REQUIRE(with_fingering(line, found.at(0)) == completed(line));
  for (std::size_t a = 1; a < found.size(); ++a) {
    if (a > 1) REQUIRE(found[a - 1].difficulty <= found[a].difficulty);
    REQUIRE(
        std::none_of(found.begin(), found.begin() + static_cast<std::ptrdiff_t>(a),
                     [&](const LineFingering& other) { return other.added == found[a].added; }));
  }
}

}  // namespace

TEST_CASE("fingering: what is given stays and all else is completed", "[fingering]") {
  for_lines_by_chance([](const Line& line) {
    const Line complete = completed(line);
    REQUIRE(complete.events.size() == line.events.size());
    for (std::size_t e = 0; e < line.events.size(); ++e) {
      const auto misplaced = misplaced_finger(line.hand, line.events[e], std::nullopt);
      for (std::size_t n = 0; n < line.events[e].notes.size(); ++n) {
        const Note& before = line.events[e].notes[n];
        const Note& after = complete.events[e].notes[n];
        if (before.finger) {
          require_given_kept(before, after, misplaced && misplaced->note == n);
        } else {
          require_kept(before, after, line.events[e].struck_count() <= kMostFingers);
        }
      }
    }
  });
}

TEST_CASE("fingering: a finger meant for another note is set aside", "[fingering]") {
  const Line complete = completed(line_written("C4:5>4+E4+G4 C4:1+E4+G4"));
  const std::vector<Note>& notes = complete.events.at(0).notes;
  CHECK(notes.at(0).set_aside == Finger{5});
  CHECK(notes.at(0).changes_to.empty());
  CHECK(struck_fingers(complete.events[0]) == std::vector<Finger>{1, 3, 5});
  CHECK(complete.events.at(1).notes.at(0).set_aside == std::nullopt);
  CHECK(without_fingers(complete).events.at(0).notes.at(0).set_aside == std::nullopt);
}

TEST_CASE("fingering: nothing impossible where anything else is possible", "[fingering]") {
  for_lines_by_chance([](const Line& line) {
    const Line complete = completed(line);
    for (std::size_t at = 0; at < line.events.size(); ++at) require_possible(line, complete, at);
  });
}

TEST_CASE("fingering: the mirror image gets the same fingers", "[fingering]") {
  // Scales do not: handbooks finger both hands for the keys, not for one another's mirror image.
  const auto has_figure = [](const Line& line) {
    return !figures_of(line.hand, grips_of(line, SpanTable(std::nullopt))).empty();
  };
  std::size_t compared = 0;
  for_lines_by_chance([&](const Line& line) {
    const Line image = mirror_image(line);
    if (has_figure(line) || has_figure(image)) return;
    INFO(notation_of(line));
    REQUIRE(mirror_image(completed(line)) == completed(image));
    ++compared;
  });
  CHECK(compared > 200);
}

TEST_CASE("fingering: completing twice changes nothing more", "[fingering]") {
  for_lines_by_chance([](const Line& line) {
    const Line complete = completed(line);
    REQUIRE(completed(line) == complete);
    REQUIRE(completed(complete) == complete);
  });
}

TEST_CASE("fingering: alternatives are in order, different, and begin with the easiest",
          "[fingering]") {
  Chance chance(seed_of_this_run());
  for (int i = 0; i < 20; ++i) {
    const Line line = without_fingers(random_line(chance, Hand::right, 30));
    FingeringOptions options;
    options.most = 7;
    const auto found = suggest(score_of({line}), options).at(0).lines.at(0);
    REQUIRE(found.size() <= options.most);
    require_in_order(line, found);
  }
}

TEST_CASE("fingering: a given finger is not easier to find than a free one", "[fingering]") {
  for_lines_by_chance([](const Line& line) {
    const auto with = suggest(score_of({line})).at(0).lines.at(0).front();
    REQUIRE(with.difficulty >= 0);
    const auto again = suggest(score_of({with_fingering(line, with)})).at(0).lines.at(0).front();
    if (!has_held_keys(line)) REQUIRE(again.difficulty == with.difficulty);
    REQUIRE(again.suggested == 0);
  });
}

TEST_CASE("fingering: a complete line is as difficult as its suggestion was", "[fingering]") {
  for_lines_by_chance([](const Line& line) {
    INFO(notation_of(line));
    const auto found = suggest(score_of({line})).at(0).lines.at(0).front();
    const Line complete = with_fingering(line, found);
    const std::optional<double> difficulty = difficulty_of(complete);
    const bool all_fingered = std::all_of(complete.events.begin(), complete.events.end(),
                                          [](const Event& event) { return event.is_fingered(); });
    REQUIRE(difficulty.has_value() == all_fingered);
    if (!difficulty) return;
    REQUIRE(*difficulty == suggest(score_of({complete})).at(0).lines.at(0).front().difficulty);
    if (!has_held_keys(line)) REQUIRE(*difficulty == found.difficulty);
  });
}

TEST_CASE("fingering: a line without fingers has no difficulty, one without notes none to speak of",
          "[fingering]") {
  CHECK(difficulty_of(line_written("C4:1 D:2 E")) == std::nullopt);
  CHECK(difficulty_of(line_written("C4:1 D+E:2")) == std::nullopt);
  CHECK(difficulty_of(line_written("C4:1~ C r D:2")).has_value());
  CHECK(difficulty_of(line_written("r r")) == 0);
  CHECK(difficulty_of(Line{}) == 0);
}

TEST_CASE("fingering: each hand's difficulty goes into the analysis, for the bars that it is of",
          "[fingering]") {
  const Source source("two", "reach: 9\nRH: C5:1 G:5 | C6:4 |\nLH: C3:5 | D:4 E |");
  const Score score = read_notation(source).score;
  const AnalysedScore whole("two", score);
  const auto difficulties = [](const AnalysedScore& analysed) {
    const AnalysedScore difficult = with_difficulties(analysed);
    return std::pair(difficult[0][0].found().difficulty, difficult[0][1].found().difficulty);
  };
  CHECK(whole[0][0].found().difficulty == std::nullopt);
  CHECK(difficulties(whole) ==
        std::pair(difficulty_of(score.passages[0].lines[0], 9), std::optional<double>()));
  const AnalysedScore first = only_bars(whole, {1, 1});
  CHECK(difficulties(first) == std::pair(difficulty_of(line_written("C5:1 G:5"), 9),
                                         difficulty_of(line_written("hand: left\nC3:5"))));
  const AnalysedScore second = only_bars(whole, {2, 2});
  CHECK(difficulties(second) ==
        std::pair(difficulty_of(line_written("C6:4")), std::optional<double>()));
}

}  // namespace fingerturn
