#pragma once

#include "fingerturn/practice.hpp"

#include <array>
#include <string>
#include <string_view>
#include <vector>

/// What a plan says, before it is laid out.
namespace fingerturn {

inline constexpr std::string_view kBeforeTheKeysHeading =
    "Before the keys (common practice, no source)";

/// How to sit and where to aim, once for all places (common practice, no source).
inline constexpr std::array<std::string_view, 5> kBeforeTheKeys{
    "Sit so that the elbow is no lower than the keys.",
    "Keep the wrist straight, neither dropped nor raised, nor bent to a side.",
    "Leave the fingers in the shape that they have when the arm hangs at rest.",
    "Aim at where a key speaks: before it reaches its bed, some 7 mm down.",
    "Stop at pain, and rest."};

inline constexpr std::string_view kStepsHeading =
    "The steps (common practice, no source; places, numbers and tempos are our convention)";

/// A kind of step, and how it is done.
struct StepExplained {
  std::string_view name;
  std::string_view how;
};

/// A step of a place in words: its name, and what is played, one thing each.
struct StepWords {
  std::string_view name;
  bool is_list = false;  ///< what it plays is better set as a list than in one line
  std::vector<std::string> items;
};

/// "Bars 3 to 4, again 11 to 12, right hand", with the title where a score has several passages.
std::string place_heading(const AnalysedScore& analysed, const PlannedPlace& place);

/// Why it is a place: "Right hand, 12 notes: 6 doubles in rows, 1 passing; full swings up to
/// quarter = 75, the goal is quarter = 96."
std::string place_reason(const AnalysedPassage& piece, const PlannedPlace& place);

/// What the sum that it was found by comes to.
std::string place_sum(const PlannedPlace& place);

/// What became of it since an earlier plan, and where to go on; nothing where there is none.
std::vector<std::string> place_progress(const AnalysedPassage& piece, const PlannedPlace& place);

StepWords words_of(const AnalysedPassage& piece, const PlannedPlace& place,
                   const PracticeStep& step);

/// What a kind of step is called, and how it is done.
const StepExplained& explained(PracticeStepKind kind);

/// The kinds of steps that a plan has, to be explained once for all places.
std::vector<StepExplained> explained_steps(const PracticePlan& plan);

/// What is said of the plan as a whole, below its title.
std::vector<std::string> plan_head(const AnalysedScore& analysed, const PracticePlan& plan);

/// What is left out and what is settled, at the end.
std::vector<std::string> plan_foot(const AnalysedScore& analysed, const PracticePlan& plan);

/// The piece with only the bars of a place and the hands that ask something there.
AnalysedScore only_place(const AnalysedScore& analysed, const PlannedPlace& place);

}  // namespace fingerturn
