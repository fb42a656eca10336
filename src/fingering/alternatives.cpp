#include "fingerturn/fingering.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// The fingerings of one hand, the easiest first.
using OfHand = std::vector<LineFingering>;

const LineFingering& fingering_at(const OfHand& of_hand, std::size_t number) {
  return of_hand[std::min(number, of_hand.size() - 1)];
}

/// A passage with one of its fingerings.
struct Completed {
  Passage passage;
  std::vector<std::optional<double>> difficulties;  ///< of each hand, in the bars that are shown
  std::size_t suggested = 0;
  std::string apart;  ///< what sets it apart from the first
};

std::string count_words(std::size_t suggested) {
  if (suggested == 0) return "no finger is suggested";
  return suggested == 1 ? "1 finger is suggested"
                        : fmt::format("{} fingers are suggested", suggested);
}

std::string difficulty_words(const std::optional<double>& difficulty) {
  return difficulty ? fmt::format("{:.1f}", *difficulty) : "not known";
}

/// "Difficulty 31.2 in the right hand, 8.0 in the left; 12 fingers are suggested, by a model: ..."
std::string remark_of(const Completed& completed, const std::optional<BarRange>& bars) {
  std::string remark = bars ? "Difficulty of " + to_string(*bars) + ":" : "Difficulty";
  for (std::size_t i = 0; i < completed.difficulties.size(); ++i) {
    remark += fmt::format("{} {} in the {} hand", i == 0 ? "" : ",",
                          difficulty_words(completed.difficulties[i]),
                          to_string(completed.passage.lines[i].hand));
  }
  return remark + "; " + count_words(completed.suggested) +
         (completed.suggested == 0 ? "." : ", by a model: try them.");
}

/// The difficulty of some bars of a line by themselves.
std::optional<double> difficulty_in(const Line& line, const BarRange& bars,
                                    std::optional<int> reach_semitones) {
  Passage passage;
  passage.lines.push_back(line);
  const Score part = only_bars(Score{{std::move(passage)}}, bars);
  const std::vector<Line>& left = part.passages.front().lines;
  return left.empty() ? 0 : difficulty_of(left.front(), reach_semitones);
}

/// "left hand: thumb on G2 instead of F2, bar 2", the hand where there are two.
void add_apart(const LineFingering& fingering, Hand hand, bool name_hand, std::string& apart) {
  if (fingering.apart.empty()) return;
  if (!apart.empty()) apart += "; ";
  if (name_hand) apart += to_string(hand) + " hand: ";
  apart += fingering.apart;
}

Completed completed_by(const Passage& passage, const PassageFingerings& fingerings,
                       std::size_t number, const FingeringOptions& options,
                       const std::optional<BarRange>& bars) {
  Completed completed{passage, {}, 0, {}};
  const std::optional<int> reach =
      options.reach_semitones ? options.reach_semitones : passage.reach_semitones;
  for (std::size_t i = 0; i < passage.lines.size(); ++i) {
    const LineFingering& fingering = fingering_at(fingerings.lines[i], number);
    Line& line = completed.passage.lines[i];
    line = with_fingering(std::move(line), fingering);
    completed.suggested += fingering.suggested;
    add_apart(fingering, passage.lines[i].hand, passage.lines.size() > 1, completed.apart);
    completed.difficulties.push_back(bars ? difficulty_in(line, *bars, reach)
                                          : fingering.difficulty);
  }
  if (!passage.lines.empty()) completed.passage.remarks.push_back(remark_of(completed, bars));
  return completed;
}

std::size_t most_found(const PassageFingerings& fingerings) {
  std::size_t most = 1;
  for (const OfHand& of_hand : fingerings.lines) most = std::max(most, of_hand.size());
  return most;
}

/// "fingering 2 of 3, difficulty 4.1: thumb on G4 instead of F4, bar 2", of all hands together.
std::string number_words(const Completed& completed, std::size_t number, std::size_t count) {
  std::optional<double> sum = 0;
  for (const std::optional<double>& difficulty : completed.difficulties) {
    sum = sum && difficulty ? std::optional(*sum + *difficulty) : std::nullopt;
  }
  return fmt::format("fingering {} of {}, difficulty {}{}{}", number + 1, count,
                     difficulty_words(sum), completed.apart.empty() ? "" : ": ", completed.apart);
}

/// The score with the easiest fingering outside the bars.
Score settled_outside(Score score, const FingeringOptions& options, const BarRange& bars) {
  const Score easiest = with_suggestions(score, options);
  for (std::size_t p = 0; p < score.passages.size(); ++p) {
    std::vector<Line>& lines = score.passages[p].lines;
    for (std::size_t l = 0; l < lines.size(); ++l) {
      for (std::size_t e = 0; e < lines[l].events.size(); ++e) {
        const Event& settled = easiest.passages[p].lines[l].events[e];
        if (!bars.contains(settled.bar)) lines[l].events[e] = settled;
      }
    }
  }
  return score;
}

}  // namespace

Score with_fingerings(const Score& score, const FingeringOptions& options,
                      const std::optional<BarRange>& bars) {
  const Score begun = bars ? settled_outside(score, options, *bars) : score;
  const std::vector<PassageFingerings> found = suggest(begun, options);
  Score complete;
  for (std::size_t p = 0; p < found.size(); ++p) {
    const std::size_t count = most_found(found[p]);
    for (std::size_t number = 0; number < count; ++number) {
      Completed completed = completed_by(begun.passages[p], found[p], number, options, bars);
      std::string& title = completed.passage.title;
      if (options.most > 1) {
        title += (title.empty() ? "" : ", ") + number_words(completed, number, count);
        completed.passage.apart = completed.apart;
      }
      complete.passages.push_back(std::move(completed.passage));
    }
  }
  return complete;
}

}  // namespace fingerturn
