#include "model/tempo_words.hpp"
#include "report/text_foot.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

#include <fmt/format.h>

namespace fingerturn {
namespace {

std::string tempo_words(const PassageAnalysis& analysis) {
  if (!analysis.full_swing_tempo) return {};
  std::string hands;
  for (const LineAnalysis& line : analysis.lines) {
    if (analysis.lines.size() < 2 || !line.totals.full_swing_tempo) continue;
    hands += fmt::format("{}{} {}", hands.empty() ? "" : ", ", to_string(line.hand),
                         tempo_not_above(*line.totals.full_swing_tempo));
  }
  return fmt::format("full swings up to quarter = {}{}; faster, they shrink",
                     tempo_not_above(*analysis.full_swing_tempo),
                     hands.empty() ? "" : " (" + hands + ")");
}

/// A bar and how often the kinds differ in it.
struct Places {
  std::int32_t bar = 0;
  std::size_t count = 0;
};

std::vector<Places> places_of(const Line& right, const Together& together) {
  std::vector<Places> places;
  for (const KindsDiffer& differ : together.kinds_differ) {
    const std::int32_t bar = right.events[differ.right_event].bar;
    if (places.empty() || places.back().bar != bar) places.push_back({bar, 0});
    ++places.back().count;
  }
  return places;
}

/// "in bars 1 (twice), 2 and 4": the first bars in which the kinds differ.
std::string places_words(const std::vector<Places>& places) {
  constexpr std::size_t kMostBars = 12;
  std::string words = places.size() == 1 ? "in bar" : "in bars";
  for (std::size_t i = 0; i < places.size() && i < kMostBars; ++i) {
    words += fmt::format("{} {}", i > 0 ? "," : "", places[i].bar);
    if (places[i].count > 1) words += fmt::format(" ({} times)", places[i].count);
  }
  if (places.size() > kMostBars) words += fmt::format(" and {} more", places.size() - kMostBars);
  return words;
}

std::string together_words(const Line& right, const Together& together) {
  if (together.onsets == 0) return {};
  std::string words = fmt::format(
      "of {} note{} struck together with a side in both hands, the forearms turn parallel at {} "
      "and contrary at {}",
      together.onsets, together.onsets == 1 ? "" : "s", together.parallel, together.contrary);
  if (together.kinds_differ.empty()) return words;
  return words + "; one hand is single and the other double " +
         places_words(places_of(right, together));
}

}  // namespace

std::string together_text(const Passage& passage, const PassageAnalysis& analysis,
                          const TextStyle& style) {
  std::string text = labelled("tempo", tempo_words(analysis), style);
  if (!analysis.together) return text;
  return text +
         labelled("together", together_words(passage.lines.front(), *analysis.together), style);
}

}  // namespace fingerturn
