#include "cli/finger.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace fingerturn::cli {
namespace {

/// The fingerings of one hand, the easiest first.
using OfHand = std::vector<LineFingering>;

const LineFingering& fingering_at(const OfHand& of_hand, std::size_t number) {
  return of_hand[std::min(number, of_hand.size() - 1)];
}

std::string count_words(std::size_t suggested) {
  if (suggested == 0) return "no finger is suggested";
  return suggested == 1 ? "1 finger is suggested"
                        : fmt::format("{} fingers are suggested", suggested);
}

/// "Difficulty 31.2 in the right hand, 8.0 in the left; 12 fingers are suggested, by a model: ..."
std::string remark_of(const Passage& passage, const PassageFingerings& fingerings,
                      std::size_t number) {
  std::string remark = "Difficulty";
  std::size_t suggested = 0;
  for (std::size_t i = 0; i < passage.lines.size(); ++i) {
    const LineFingering& fingering = fingering_at(fingerings.lines[i], number);
    remark += fmt::format("{} {:.1f} in the {} hand", i == 0 ? "" : ",", fingering.difficulty,
                          to_string(passage.lines[i].hand));
    suggested += fingering.suggested;
  }
  return remark + "; " + count_words(suggested) +
         (suggested == 0 ? "." : ", by a model: try them.");
}

Passage with_fingering(const Passage& passage, const PassageFingerings& fingerings,
                       std::size_t number) {
  Passage complete = passage;
  for (std::size_t i = 0; i < complete.lines.size(); ++i) {
    complete.lines[i] = fingerturn::with_fingering(std::move(complete.lines[i]),
                                                   fingering_at(fingerings.lines[i], number));
  }
  if (!passage.lines.empty()) complete.remarks.push_back(remark_of(passage, fingerings, number));
  return complete;
}

std::size_t most_found(const PassageFingerings& fingerings) {
  std::size_t most = 1;
  for (const OfHand& of_hand : fingerings.lines) most = std::max(most, of_hand.size());
  return most;
}

/// Of all hands together.
double difficulty_of(const PassageFingerings& fingerings, std::size_t number) {
  double sum = 0;
  for (const OfHand& of_hand : fingerings.lines) sum += fingering_at(of_hand, number).difficulty;
  return sum;
}

}  // namespace

Score with_fingerings(const Score& score, const FingeringOptions& options) {
  const std::vector<PassageFingerings> found = suggest(score, options);
  Score complete;
  for (std::size_t p = 0; p < found.size(); ++p) {
    const std::size_t count = most_found(found[p]);
    for (std::size_t number = 0; number < count; ++number) {
      Passage passage = with_fingering(score.passages[p], found[p], number);
      if (options.most > 1) {
        passage.title += fmt::format("{}fingering {} of {}, difficulty {:.1f}",
                                     passage.title.empty() ? "" : ", ", number + 1, count,
                                     difficulty_of(found[p], number));
      }
      complete.passages.push_back(std::move(passage));
    }
  }
  return complete;
}

}  // namespace fingerturn::cli
