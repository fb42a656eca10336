#include "write/practice/plan_words.hpp"

#include "score/timeline.hpp"
#include "text/numbers.hpp"
#include "text/words.hpp"
#include "write/shared/cues.hpp"
#include "write/shared/demand_words.hpp"
#include "write/shared/note_words.hpp"
#include "write/shared/passage_words.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <iterator>
#include <optional>

#include <fmt/format.h>

namespace fingerturn {
namespace {

/// "3" or "3 to 4".
std::string bar_numbers(BarRange bars) {
  return bars.first == bars.last ? fmt::format("{}", bars.first)
                                 : fmt::format("{} to {}", bars.first, bars.last);
}

std::string hands_of(const PlannedPlace& place) {
  return place.hands.size() > 1 ? "both hands" : to_string(place.hands.front()) + " hand";
}

/// "bar 3, beat 2.5" of the event of the piece; the bar is left out where the place is one bar.
std::string place_words(const AnalysedPassage& piece, BarRange place, const Line& line,
                        std::size_t event) {
  const std::int32_t bar = line.events[event].bar;
  const std::optional<Fraction> beat = beat_of(piece.written(), line, event, bar_beginnings(line));
  if (!beat) return fmt::format("bar {}", bar);
  const std::string beat_words = "beat " + beat_text(*beat);
  const bool is_plain = place == BarRange{bar, bar};
  return is_plain ? beat_words : fmt::format("bar {}, {}", bar, beat_words);
}

/// What the note asks that a cell is about.
std::string lesson_cue(const AnalysedLine& line, const PracticeMusic& cell) {
  const auto found =
      std::ranges::lower_bound(line.found().events, cell.lesson, {}, &EventAnalysis::event);
  const std::string cue = cue_of(*found, line.hand());
  // What a cell is called says the rest, but how far a leap goes.
  return found->crossing == Crossing::none && found->rotation != Rotation::double_rotation
             ? cue
             : cue.substr(0, cue.find(';'));
}

std::string notes_words(const Line& line, const PracticeMusic& cell) {
  std::string notes;
  for (const std::size_t event : cell.events) {
    if (line.events[event].struck_count() == 0) continue;
    notes += (notes.empty() ? "" : " ") + event_words(line, event);
  }
  return notes;
}

/// Cells of one hand that ask the same, with what they ask, in the order of their first ones.
struct CellGroup {
  std::string asks;  ///< "double: swing left, play right"
  std::vector<std::string> cells;
};

/// "G4:2 A4:3 (bar 3, beat 2.5, 3 times)"
std::string cell_words(const AnalysedPassage& piece, BarRange place, const Line& line,
                       const PracticeMusic& cell) {
  const std::string times = cell.times > 1 ? fmt::format(", {} times", cell.times) : "";
  return fmt::format("{} ({}{})", notes_words(line, cell),
                     place_words(piece, place, line, cell.events.front()), times);
}

std::vector<std::string> cell_items(const AnalysedPassage& piece, BarRange place,
                                    const PracticeStep& step) {
  const bool one_hand = std::ranges::all_of(step.music, [&](const PracticeMusic& cell) {
    return cell.music.lines.front().hand == step.music.front().music.lines.front().hand;
  });
  std::vector<CellGroup> groups;
  for (const PracticeMusic& cell : step.music) {
    const Hand hand = cell.music.lines.front().hand;
    const AnalysedLine line = *piece.of_hand(hand);
    std::string asks = fmt::format("{}{}: {}", one_hand ? "" : to_string(hand) + " hand, ",
                                   cell.words, lesson_cue(line, cell));
    auto group = std::ranges::find(groups, asks, &CellGroup::asks);
    if (group == groups.end()) group = groups.insert(group, {std::move(asks), {}});
    group->cells.push_back(cell_words(piece, place, line.written(), cell));
  }
  std::vector<std::string> items;
  items.reserve(groups.size());
  for (const CellGroup& group : groups) {
    items.push_back(fmt::format("{}. {}", group.asks, fmt::join(group.cells, "; ")));
  }
  return items;
}

/// What is put into other rhythms, each hand once.
std::vector<std::string> rhythm_items(const AnalysedPassage& piece, const PlannedPlace& place,
                                      const PracticeStep& step) {
  std::vector<std::string> items;
  std::optional<Hand> told;
  for (const PracticeMusic& music : step.music) {
    const Hand hand = music.music.lines.front().hand;
    if (hand == told) continue;
    told = hand;
    const Line& line = *line_of_hand(piece.written(), hand);
    items.push_back(fmt::format(
        "{}{} notes from {} ({})", place.hands.size() > 1 ? to_string(hand) + " hand, " : "",
        music.events.size(), event_words(line, music.events.front()),
        place_words(piece, place.stretch.bars, line, music.events.front())));
  }
  return items;
}

std::string percent_words(double share) {
  constexpr double kPercent = 100;
  return fmt::format("{:.0f} %", std::floor(share * kPercent));
}

/// "quarter = 38, 45, 53, 63, 75", each with its share of a full swing where that is less.
std::string tempo_words(const AnalysedPassage& piece, const std::vector<TempoStep>& tempos) {
  std::string words;
  for (const TempoStep& tempo : tempos) {
    words += words.empty() ? tempo_equation(piece, tempo.quarters_per_minute)
                           : ", " + in_written_beat(piece, tempo.quarters_per_minute);
    if (tempo.swing_size < 1) words += fmt::format(" ({})", percent_words(tempo.swing_size));
  }
  return words;
}

/// How each kind of step is done, in the order of the kinds.
constexpr std::array<StepExplained, 7> kSteps{{
    {"note by note",
     "out of time, coming to rest on each; the swing that prepares a note begins only when that "
     "note is due"},
    {"cells", "each by itself, as slowly as it needs, until it is easy"},
    {"full swings", "in time, each as large as note by note"},
    {"smaller swings",
     "on to the goal; in brackets the share of a full swing that there is time for, and no less"},
    {"rhythms",
     "long-short, short-long, groups of 3 and of 4 with a long last note that begin on each note "
     "in turn, so slowly that the quick notes have full swings"},
    {"hands together",
     "where one is single and the other double: these beats, then each bar, then all"},
    {"joining", "out of the music before and into what follows"},
}};

std::string title_before(const AnalysedScore& analysed, const PlannedPlace& place) {
  if (analysed.size() == 1) return {};
  return std::string(title_of(analysed, analysed.written().passages[place.passage])) + ", ";
}

std::string left_out_words(const AnalysedScore& analysed, const PracticePlan& plan) {
  constexpr std::size_t kMostNamed = 12;
  std::vector<std::string> bars;
  for (std::size_t i = 0; i < plan.left_out.size() && i < kMostNamed; ++i) {
    const PlannedPlace& place = plan.left_out[i];
    bars.push_back(title_before(analysed, place) + to_string(place.stretch.bars));
  }
  if (plan.left_out.size() > kMostNamed) {
    bars.push_back(fmt::format("{} more", plan.left_out.size() - kMostNamed));
  }
  return enumerated(bars);
}

struct FingerCounts {
  std::size_t all = 0;
  std::size_t suggested = 0;

  void add(const Line& line) {
    for (const Event& event : line.events) {
      for (const Note& note : event.notes) {
        if (note.held) continue;
        ++all;
        suggested += note.suggested ? 1 : 0;
      }
    }
  }
};

FingerCounts fingers_in(const Score& score) {
  FingerCounts counts;
  for (const Passage& passage : score.passages) {
    for (const Line& line : passage.lines) counts.add(line);
  }
  return counts;
}

}  // namespace

std::string place_heading(const AnalysedScore& analysed, const PlannedPlace& place) {
  std::string words = title_before(analysed, place) + to_string(place.stretch.bars);
  if (words.starts_with('b')) words.front() = 'B';
  constexpr std::size_t kMostNamed = 6;
  std::vector<std::string> again;
  for (const BarRange& bars : place.stretch.again) {
    if (again.size() < kMostNamed) again.push_back(bar_numbers(bars));
  }
  const std::size_t more = place.stretch.again.size() - again.size();
  if (more > 0) again.push_back(fmt::format("{} more times", more));
  if (!again.empty()) words += ", again " + enumerated(again);
  return fmt::format("{}, {}", words, hands_of(place));
}

std::string place_reason(const AnalysedPassage& piece, const PlannedPlace& place) {
  std::string words = fmt::format(
      "{} in {}", fmt::join(demand_parts(place.stretch.asks, DemandWorth::left_out), ", "),
      counted(place.notes, "note", "notes"));
  if (place.full_swing_tempo) {
    words += "; full swings up to " + tempo_equation(piece, *place.full_swing_tempo);
  }
  words += place.goal ? "; the goal is " + tempo_equation(piece, *place.goal)
                      : "; no goal is known (--tempo gives one)";
  return sentence_of(words);
}

std::string place_sum(const PlannedPlace& place) {
  return fmt::format(
      "{} points, {} of them in one bar: {} (a sum of ours, fingerturn explain places).",
      place.stretch.asks.points, place.stretch.most_points,
      fmt::join(demand_parts(place.stretch.asks, DemandWorth::told), ", "));
}

std::vector<std::string> place_progress(const AnalysedPassage& piece, const PlannedPlace& place) {
  std::vector<std::string> words;
  if (!place.progress) return words;
  const PlaceProgress& progress = *place.progress;
  if (progress.is_new) {
    words.emplace_back("New since the last plan.");
  } else {
    words.emplace_back(progress.was_done ? "Done last time." : "Not marked as done last time.");
  }
  if (!progress.changed_fingers.empty()) {
    words.push_back("Fingers changed since: " + enumerated(progress.changed_fingers) + ".");
  }
  if (progress.is_reached) {
    words.emplace_back("It has reached its tempo: join it to what is around it.");
  } else if (!place.ladder.empty()) {
    const bool last = place.now + 1 == place.ladder.size();
    words.push_back(fmt::format("Go on at {}{}.", tempo_words(piece, {place.ladder[place.now]}),
                                last && place.goal ? ", the goal" : ""));
  }
  return words;
}

StepWords words_of(const AnalysedPassage& piece, const PlannedPlace& place,
                   const PracticeStep& step) {
  StepWords words{explained(step.kind).name, step.kind == PracticeStepKind::cells, {}};
  if (!step.tempos.empty()) {
    words.items = {tempo_words(piece, step.tempos)};
  } else if (step.kind == PracticeStepKind::rhythms) {
    words.items = rhythm_items(piece, place, step);
  } else if (step.kind == PracticeStepKind::cells) {
    words.items = cell_items(piece, place.stretch.bars, step);
  } else {
    for (const PracticeMusic& music : step.music) words.items.push_back(music.words);
  }
  return words;
}

const StepExplained& explained(PracticeStepKind kind) {
  return kSteps.at(static_cast<std::size_t>(kind));
}

std::vector<StepExplained> explained_steps(const PracticePlan& plan) {
  std::vector<StepExplained> used;
  for (std::size_t kind = 0; kind < kSteps.size(); ++kind) {
    const bool is_used = std::ranges::any_of(plan.places, [&](const PlannedPlace& place) {
      return std::ranges::any_of(place.steps, [&](const PracticeStep& step) {
        return static_cast<std::size_t>(step.kind) == kind;
      });
    });
    if (is_used) used.push_back(kSteps.at(kind));
  }
  return used;
}

std::vector<std::string> plan_head(const AnalysedScore& analysed, const PracticePlan& plan) {
  std::vector<std::string> words;
  const FingerCounts fingers = fingers_in(analysed.written());
  if (fingers.suggested > 0) {
    words.push_back(fmt::format(
        "{} of {} fingers are suggestions, marked with ?; the plan is for these fingers.",
        fingers.suggested, fingers.all));
  }
  if (plan.places.empty()) {
    words.emplace_back(
        "No bar stands out by what it asks, so there is no place to begin at (fingerturn explain "
        "places).");
    return words;
  }
  if (plan.minutes) {
    words.push_back(plan.rest_minutes > 0
                        ? fmt::format("{} minutes, {} of them to rest: two after each twenty.",
                                      *plan.minutes, plan.rest_minutes)
                        : fmt::format("{} minutes.", *plan.minutes));
  }
  return words;
}

std::vector<std::string> plan_foot(const AnalysedScore& analysed, const PracticePlan& plan) {
  std::vector<std::string> words;
  if (!plan.left_out.empty()) {
    words.push_back(
        sentence_of(fmt::format("Left for another day: {}", left_out_words(analysed, plan))));
  }
  if (!plan.settled.empty()) {
    words.push_back(
        sentence_of("In the last plan and no more among the places: " + enumerated(plan.settled)));
  }
  return words;
}

AnalysedScore only_place(const AnalysedScore& analysed, const PlannedPlace& place) {
  Score score{{analysed.written().passages[place.passage]}};
  Passage& passage = score.passages.front();
  std::erase_if(passage.lines, [&](const Line& line) {
    return std::ranges::find(place.hands, line.hand) == place.hands.end();
  });
  AnalyseOptions options;
  options.quarters_per_minute = analysed[place.passage].found().quarters_per_minute;
  options.reach_semitones = analysed[place.passage].found().reach_semitones;
  return only_bars(AnalysedScore(analysed.name(), std::move(score), options), place.stretch.bars);
}

}  // namespace fingerturn
