#include "fingerturn/analysed.hpp"
#include "rules/line.hpp"
#include "rules/places.hpp"
#include "rules/repeats.hpp"
#include "rules/tempo.hpp"
#include "rules/together.hpp"
#include "rules/totals.hpp"
#include "rules/watch/hands.hpp"
#include "rules/watch/watch_list.hpp"

#include <algorithm>
#include <utility>

/// The order in which the rules look at a score: each line by itself, and last what both hands come
/// to together.
namespace fingerturn {
namespace {

/// What the lines come to together.
void sum_up(const Passage& passage, PassageAnalysis& analysis) {
  analysis.full_swing_tempo.reset();
  for (const LineAnalysis& line : analysis.lines) {
    analysis.full_swing_tempo = slower(analysis.full_swing_tempo, line.totals.full_swing_tempo);
  }
  analysis.together = hands_together({passage, analysis});
}

/// What was found in a line, in the bars that are shown only.
void keep_shown(const PassageAnalysis& shown, const Line& written, LineAnalysis& line) {
  const auto is_outside = [&](const auto& found) {
    return !shown.shows(written.events[found.event].bar);
  };
  std::erase_if(line.events, is_outside);
  std::erase_if(line.held, is_outside);
  std::erase_if(line.watch, is_outside);
  renew_rows(written, line.events, line.watch);
  line.totals = totals_of(written, line.events);
}

/// Leaves only what stands in the bars that are shown.
void keep_shown(const Passage& passage, PassageAnalysis& found) {
  for (std::size_t l = 0; l < passage.lines.size(); ++l) {
    keep_shown(found, passage.lines[l], found.lines[l]);
  }
  sum_up(passage, found);
}

}  // namespace

Analysis analyse(const Score& score, const AnalyseOptions& options) {
  Analysis analysis;
  for (const Passage& passage : score.passages) {
    PassageAnalysis& lines = analysis.passages.emplace_back();
    AnalyseOptions settled = options;
    if (!settled.reach_semitones) settled.reach_semitones = passage.reach_semitones;
    for (const Line& line : passage.lines) {
      lines.lines.push_back(analyse_line(passage, line, settled));
    }
    lines.reach_semitones = settled.reach_semitones;
    lines.quarters_per_minute = settled.quarters_per_minute;
    find_hands(passage, lines);
    sum_up(passage, lines);
  }
  return analysis;
}

AnalysedScore::AnalysedScore(std::string name, Score score, const AnalyseOptions& options)
    : name_(std::move(name)), score_(std::move(score)), analysis_(analyse(score_, options)) {}

namespace {

/// Whether a bar is in one of these, which rise and lie apart.
template <typename Stretch>
bool is_in(const std::vector<Stretch>& stretches, std::int32_t bar) noexcept {
  const auto first_bar = [](const Stretch& stretch) { return stretch.bars.first; };
  const auto after = std::ranges::upper_bound(stretches, bar, {}, first_bar);
  return after != stretches.begin() && std::prev(after)->bars.contains(bar);
}

}  // namespace

bool PassageAnalysis::shows(std::int32_t bar) const noexcept {
  if (bars && !bars->contains(bar)) return false;
  if (is_in(again, bar)) return false;
  return !places || is_in(*places, bar);
}

std::span<const HeldKey> AnalysedLine::held_at(std::size_t event) const noexcept {
  const std::span<const HeldKey> held = found_->held;
  const auto begins_at = [&](std::size_t place) {
    const auto found = std::ranges::lower_bound(held, place, {}, &HeldKey::event);
    return static_cast<std::size_t>(found - held.begin());
  };
  const std::size_t first = begins_at(event);
  return held.subspan(first, begins_at(event + 1) - first);
}

std::optional<AnalysedLine> AnalysedPassage::of_hand(Hand hand) const noexcept {
  for (const AnalysedLine line : *this) {
    if (line.hand() == hand) return line;
  }
  return std::nullopt;
}

AnalysedScore only_bars(AnalysedScore analysed, BarRange bars) {
  for (std::size_t p = 0; p < analysed.size(); ++p) {
    PassageAnalysis& found = analysed.analysis_.passages[p];
    found.bars = bars;
    keep_shown(analysed.score_.passages[p], found);
  }
  return analysed;
}

AnalysedScore only_places(AnalysedScore analysed) {
  for (std::size_t p = 0; p < analysed.size(); ++p) {
    PassageAnalysis& found = analysed.analysis_.passages[p];
    found.doubles = doubles_of(analysed[p]);
    found.places = places_of(analysed[p]);
    keep_shown(analysed.score_.passages[p], found);
  }
  return analysed;
}

AnalysedScore with_repeats_named(AnalysedScore analysed) {
  for (std::size_t p = 0; p < analysed.size(); ++p) {
    analysed.analysis_.passages[p].again = bars_again(analysed[p]);
  }
  return analysed;
}

}  // namespace fingerturn
