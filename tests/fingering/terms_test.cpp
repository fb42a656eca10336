#include "fingering/terms.hpp"

#include "catch.hpp"
#include "fingering/difficulty.hpp"
#include "fingering/made_tasks.hpp"
#include "fingerturn/fingering.hpp"
#include "score/file_reading.hpp"

#include <regex>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include <fmt/format.h>

/// How much of each term there is in passages small enough to count by hand.
namespace fingerturn {
namespace {

/// Every entry of the tables counts as one.
constexpr Model kOnes{{}, [] {
                        Tables ones{};
                        ones.fill(kOne);
                        return ones;
                      }()};

/// The amounts of a passage with all its fingers.
std::array<std::int32_t, kTermCount> amounts_of(std::string_view notation) {
  const LineTask task(line_written(notation), kOnes);
  Counted counted;
  FingerPairs avoided;
  avoided.add(5, 4);
  Tally tally(kOnes.weights, kOnes.tables, avoided, &counted);
  const auto at = [&task](std::size_t grip) {
    return Fingered{task.grips[grip], task.choices.of(grip).front()};
  };
  for (std::size_t grip = 0; grip < task.grips.size(); ++grip) {
    add_grip(at(grip), task.spans, tally);
    if (grip >= 1) add_step(at(grip - 1), at(grip), task.spans, tally);
    if (task.costs.counts_over_two(grip)) add_over_two(at(grip - 2), at(grip), tally);
    if (task.costs.counts_three(grip)) {
      add_three(at(grip - 2), at(grip - 1), at(grip), task.spans, tally);
    }
  }
  return counted.amounts;
}

struct TermCase {
  Term term;
  std::string_view notation;
  double amount;
};

/// Counted by hand from the words in docs/fingering.md and the table of spans.
const std::vector<TermCase> kCases{
    {Term::stretch, "C4:1 E5:5", 3},  // 16 semitones, comfortable up to 13
    {Term::stretch, "E4:1 C4:2", 1},  // -4, comfortable down to -3
    {Term::stretch, "C4:1 D4:2", 0},
    {Term::stretch, "C2:1 C6:2", 8},  // no more than 8
    {Term::stretch, "hand: left\nC4:1 F2:5", 6},
    {Term::small_span, "C4:1 D4:3", 1},  // 2, relaxed from 3
    {Term::large_span, "C4:2 E4:3", 2},  // 4, relaxed up to 2
    {Term::position_change_count, "C4:1 G4:2 C5:1", 1},
    {Term::position_change_count, "C4:2 D4:1 E5:2", 1},
    {Term::position_change_count, "C4:3 G4:1 C5:2", 2},
    {Term::position_change_count, "C4:1 D4:2 E4:3", 0},
    {Term::position_change_size, "C4:3 G4:1 C5:2", 12},
    {Term::weak_finger, "C4:4 D4:5 E4:1", 2},
    {Term::weak_finger, "C4:1+G4:5", 0.5},
    {Term::three_four_five, "E4:3 F4:4 G4:5", 1},
    {Term::three_four_five, "G4:5 E4:3 F4:4", 1},
    {Term::three_four_five, "E4:2 F4:4 G4:5", 0},
    {Term::three_to_four, "E4:3 F4:4 E4:3", 2},
    {Term::four_on_black, "E4:3 F#4:4", 1},
    {Term::four_on_black, "F#4:3 G#4:4", 0},
    {Term::thumb_on_black, "F#4:1", 1},
    {Term::thumb_on_black, "F#4:1 G4:2", 1.75},
    {Term::thumb_on_black, "F#4:1 G#4:2", 1},
    {Term::five_on_black, "F#4:4 G#4:5 G4:4", 1.5},
    {Term::thumb_passing, "E4:3 F4:1", 1},
    {Term::thumb_passing, "E4:3 F#4:1", 3},
    {Term::thumb_passing, "F4:1 E4:3", 1},
    {Term::thumb_passing, "hand: left\nE4:1 F4:3", 1},
    {Term::third_finger, "E4:3 F4:1 G4:3", 2},
    {Term::chord_span, "C4:1+E4:2+G4:5", 2},  // 2-5 over 3, relaxed from 5; the others are relaxed
    {Term::chord_beyond_practical, "C4:1+E5:2", 1},
    {Term::same_finger, "C4:1 D4:1", 1},
    {Term::same_finger, "C4:1 C4:1", 0},
    {Term::change_on_repeat, "1/4 C4:1 C4:2", 1},
    {Term::change_on_repeat, "1/16 C4:1 C4:2", 0},
    {Term::quick_repeat, "1/16 C4:1 C4:1 C4:2", 1},
    {Term::quick_repeat, "1/4 C4:1 C4:1", 0},
    {Term::quick_shift, "1/8 C4:1 D4:1", 1},
    {Term::quick_shift, "1/8 C4:1 D4:2", 0},
    {Term::slow_shift, "1/4 C4:1 C#4:1", 0.5},
    {Term::far_shift, "1/8 C4:1 C5:1", 3},
    {Term::fingers_cross, "E4:3 D4:4", 1},
    {Term::fingers_cross, "E4:3 D4:1", 0},
    {Term::change_while_held, "C4:1~ C4:1+E4:3", 0},
    {Term::change_while_held, "C4:1~ C4:2+E4:3", 1},
    {Term::finger_again, "C4:1 D4:2 E4:1", 1},
    {Term::finger_again, "C4:1 D4:2 C4:1", 0},
    {Term::shift_over_two, "C4:1 D4:2 E4:1", 2},
    {Term::shift_over_rest, "1/8 C4:1 r F4:1", 3},
    {Term::quick_move, "1/8 C4:1 D4:1", 1},
    {Term::quick_move, "1/8 C4:1 D4:2", 0},
    {Term::slow_move, "1/4 C4:1 D4:1", 1},
    {Term::off_triad, "C4:1+E4:3+G4:5", 0},
    {Term::off_triad, "C4:1+E4:2+G4:4", 1},
    {Term::off_triad, "E4:1+G4:2+C5:5", 0},
    {Term::off_triad, "hand: left\nC3:5+E3:3+G3:1", 0},
    {Term::off_triad, "hand: left\nG3:5+C4:2+E4:1", 0},
    {Term::off_triad, "hand: left\nG3:5+C4:3+E4:1", 1},
    {Term::off_triad, "C4:1+D4:2+G4:4", 0},  // no triad
    {Term::opening_finger, "C4:1 D4:2 r E4:3", 2},
    {Term::finger_over_two, "C4:1 D4:2 E4:3 F4:4", 2},
    {Term::finger_in_chords, "C4:1 D4:2+F4:4 D4:2+F4:4", 3},  // 2 halves and 4 halves
    {Term::off_handbook, "C4:1 D:2 E:3 F:1 G:2 A:3 B:4 C:5", 0},
    {Term::off_handbook, "C4:1 D:2 E:3 F:4 G:1 A:2 B:3 C:4", 5},
    {Term::off_printed, "1/8 C4:1 E D F | C E:3 D F", 1},
    {Term::off_repeat, "1/8 C4:1 E:2 D:3 F:4 | C:1 E:3 D:3 F:4", 1},
    {Term::off_repeat, "1/8 C4:1 E:2 D:3 F:4 | D:1 F:3 E:3 G:4", 0},
    {Term::off_sequence, "1/8 C4:1 E:2 D:3 F:4 | D:1 F:3 E:3 G:4", 1},
    {Term::avoided_pair, "C4:4 D4:5 C4:4 D4:3", 2},
    {Term::avoided_pair, "C4:4+D4:5", 0},
    {Term::off_figure, "C4:1 D:2 E:3 F:1 G:2 A:3 B:4", 0},
    {Term::off_figure, "C4:1 D:2 E:3 F:1 G:2 A:3 B:5", 1},
};

}  // namespace

TEST_CASE("fingering: each term counts what it says", "[fingering]") {
  std::set<Term> counted;
  for (const TermCase& wanted : kCases) {
    const auto at = static_cast<std::size_t>(wanted.term);
    INFO(term_words()[at].id << " in " << wanted.notation);
    CHECK(amounts_of(wanted.notation).at(at) == wanted.amount * kOne);
    counted.insert(wanted.term);
  }
  CHECK(counted.size() == kTermCount);
}

TEST_CASE("fingering: every term is described with its weight", "[fingering]") {
  // An item of a list may go on in a second line.
  const std::string page = std::regex_replace(
      tests::text_of_file(FINGERTURN_SOURCE_DIR "/docs/fingering.md"), std::regex("\n +"), " ");
  for (const DifficultyTerm& term : difficulty_terms()) {
    const std::string item =
        fmt::format("\n- `{}` ({:.3f}): {}\n", term.id, term.weight, term.counts);
    INFO(item);
    const std::size_t place = page.find(item);
    REQUIRE(place != std::string::npos);
    // Each list has its source above it.
    const std::size_t source = page.rfind("*Source:* ", place);
    REQUIRE(source != std::string::npos);
    CHECK(page.substr(source).starts_with(fmt::format("*Source:* {}\n", term.source)));
  }
}

}  // namespace fingerturn
