#include "cli/excerpt.hpp"

#include "cli/messages.hpp"
#include "cli/output.hpp"
#include "cli/score_input.hpp"
#include "fingerturn/excerpt.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <vector>

#include <fmt/format.h>

namespace fingerturn::cli {
namespace {

constexpr std::size_t kMostNamed = 8;

/// "bars 1 to 4, bar 9": the bars of a passage, in runs.
std::string bars_words(const Passage& passage) {
  std::vector<BarRange> runs;
  for (const std::int32_t bar : bars_of(passage)) {
    if (runs.empty() || runs.back().last + 1 != bar) runs.push_back({bar, bar});
    runs.back().last = bar;
  }
  if (runs.empty()) return "no bars";
  std::string words;
  for (std::size_t i = 0; i < runs.size() && i < kMostNamed; ++i) {
    words += (i > 0 ? ", " : "") + to_string(runs[i]);
  }
  return runs.size() > kMostNamed ? words + " and more" : words;
}

/// "; there are bars 1 to 12", or what each of several passages has.
std::string bars_there_are(const Score& score) {
  if (score.passages.size() == 1) return "; there are " + bars_words(score.passages.front());
  std::string words;
  for (std::size_t p = 0; p < score.passages.size() && p < kMostNamed; ++p) {
    words += fmt::format("; passage {} has {}", p + 1, bars_words(score.passages[p]));
  }
  const std::size_t named = std::min(score.passages.size(), kMostNamed);
  return named < score.passages.size()
             ? fmt::format("{}; {} more passages", words, score.passages.size() - named)
             : words;
}

void say_nothing_is_played(const ScoreInput& input, const AnnotateOptions& options) {
  const std::string hand =
      options.hand ? fmt::format(" by the {} hand", to_string(*options.hand)) : "";
  say(fmt::format("{}: nothing is played{} in {}{}", input.name, hand, to_string(*options.bars),
                  bars_there_are(input.score)));
}

}  // namespace

ExitStatus excerpt(const AnnotateOptions& options) {
  Output output(options.output);
  if (!output.open(options.inputs)) return ExitStatus::wrong_usage;
  const ScoreInput input = read_score(options.inputs.front(), options);
  if (input.status != ExitStatus::done) return input.status;
  const Excerpt part = fingerturn::excerpt(input.score, *options.bars);
  if (part.passages.empty()) {
    say_nothing_is_played(input, options);
    return ExitStatus::wrong_usage;
  }
  output.write(write_excerpt(input.score, part));
  return output.finish() ? ExitStatus::done : ExitStatus::wrong_usage;
}

}  // namespace fingerturn::cli
