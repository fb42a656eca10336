#include "cli/compare.hpp"

#include "cli/messages.hpp"
#include "cli/output.hpp"
#include "cli/score_input.hpp"
#include "fingerturn/fingerturn.hpp"

#include <algorithm>
#include <cstddef>
#include <deque>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace fingerturn::cli {
namespace {

/// A score with its analysis. It does not move once a fingering points into it.
struct Analysed {
  std::string name;
  Score score;
  Analysis analysis;
};

/// One comparison: its fingerings, which point into what was analysed, and what comes of it.
struct Compared {
  std::string title;
  std::vector<Fingering> fingerings;
  Comparison comparison;
};

Analysed analysed(std::string name, Score score, const AnnotateOptions& options) {
  Analysis analysis = with_difficulties(analysis_of(name, score, options), score);
  return {std::move(name), std::move(score), std::move(analysis)};
}

/// The inputs, with missing fingers filled in where that is asked for.
std::optional<std::deque<Analysed>> read_all(const AnnotateOptions& options, ExitStatus& worst) {
  std::deque<Analysed> all;
  for (const std::string& path : options.inputs) {
    ScoreInput input = read_score(path, options);
    worst = std::max(worst, input.status);
    if (input.status != ExitStatus::done) continue;
    all.push_back(analysed(std::move(input.name), std::move(input.score), options));
  }
  if (worst != ExitStatus::done) return std::nullopt;
  return all;
}

std::string numbered(std::size_t passage) { return fmt::format("passage {}", passage + 1); }

std::string title_of(const Analysed& of, std::size_t passage) {
  const std::string& title = of.score.passages[passage].title;
  if (!title.empty()) return title;
  return of.score.passages.size() == 1 ? of.name : of.name + ", " + numbered(passage);
}

/// How many notes are struck, and how many of them have a finger that is given.
std::string given_words(const Passage& passage, const std::optional<BarRange>& bars) {
  std::size_t struck = 0;
  std::size_t given = 0;
  for (const Line& line : passage.lines) {
    for (const Event& event : line.events) {
      if (bars && !bars->contains(event.bar)) continue;
      for (const Note& note : event.notes) {
        if (note.held) continue;
        ++struck;
        if (note.finger && !note.suggested) ++given;
      }
    }
  }
  if (given == struck) return "as given, a finger on every note";
  return fmt::format("as given, {} of {} fingers; the others filled in (?)", given, struck);
}

/// The passages of one score with each other.
Compared within(const Analysed& of) {
  Compared compared{of.name, {}, {}};
  for (std::size_t p = 0; p < of.score.passages.size(); ++p) {
    const std::string& title = of.score.passages[p].title;
    compared.fingerings.push_back(
        {title.empty() ? numbered(p) : title, of.score.passages[p], of.analysis.passages[p]});
  }
  return compared;
}

/// The passages of this number of several scores; the last is a suggestion where one was asked for.
Compared across(const std::deque<Analysed>& all, std::size_t passage,
                const AnnotateOptions& options) {
  Compared compared{title_of(all.front(), passage), {}, {}};
  // One input beside its suggestion needs no name.
  const bool is_alone = options.inputs.size() == 1;
  for (std::size_t at = 0; at < all.size(); ++at) {
    const Passage& of = all[at].score.passages[passage];
    compared.fingerings.push_back(
        {is_alone && at == 0 ? given_words(of, options.bars) : all[at].name, of,
         all[at].analysis.passages[passage]});
  }
  return compared;
}

bool have_as_many_passages(const std::deque<Analysed>& all) {
  const std::size_t count = all.front().score.passages.size();
  const auto other = std::find_if(all.begin(), all.end(), [count](const Analysed& analysed) {
    return analysed.score.passages.size() != count;
  });
  if (other == all.end()) return true;
  say(fmt::format("{} has {} passages and {} has {}; choose one with --passage", all.front().name,
                  count, other->name, other->score.passages.size()));
  return false;
}

/// What is to be compared with what; none, and a message, where there is nothing.
std::optional<std::vector<Compared>> comparisons_of(const std::deque<Analysed>& all,
                                                    const AnnotateOptions& options) {
  std::vector<Compared> comparisons;
  if (all.size() == 1) {
    const std::size_t count = all.front().score.passages.size();
    if (count < 2) {
      say(
          fmt::format("{}: there is {} passage in it; name another file to compare it with, or "
                      "compare it with a suggestion by --suggest",
                      all.front().name, count == 0 ? "no" : "one"));
      return std::nullopt;
    }
    comparisons.push_back(within(all.front()));
    return comparisons;
  }
  if (!have_as_many_passages(all)) return std::nullopt;
  for (std::size_t p = 0; p < all.front().score.passages.size(); ++p) {
    comparisons.push_back(across(all, p, options));
  }
  return comparisons;
}

/// Compares; false, and a message, where notes differ.
bool compare_all(std::vector<Compared>& comparisons) {
  for (Compared& compared : comparisons) {
    if (const std::optional<NotesDiffer> differ = notes_differ(compared.fingerings)) {
      say("not the same notes: " + render(compared.fingerings, *differ));
      return false;
    }
    compared.comparison = fingerturn::compare(compared.fingerings);
  }
  return true;
}

std::string report_text(const std::vector<Compared>& comparisons, const AnnotateOptions& options) {
  std::vector<ComparisonReport> reports;
  reports.reserve(comparisons.size());
  for (const Compared& compared : comparisons) {
    reports.push_back({compared.title, compared.fingerings, compared.comparison, options.bars});
  }
  if (options.format == Format::json) return write_comparison_json(reports);
  return write_comparison_text(reports, text_style(options));
}

/// The first score as the model fingers it, no finger being given.
void add_suggestion(std::deque<Analysed>& all, const AnnotateOptions& options) {
  Score score =
      with_suggestions(without_fingers(all.front().score), {options.analysis.reach_semitones, 1});
  all.push_back(analysed("suggested, no finger given", std::move(score), options));
}

}  // namespace

ExitStatus compare(const AnnotateOptions& options) {
  if (!can_read_inputs(options)) return ExitStatus::wrong_usage;
  Output output(options.output);
  if (!output.open(options.inputs)) return ExitStatus::wrong_usage;
  ExitStatus worst = ExitStatus::done;
  std::optional<std::deque<Analysed>> all = read_all(options, worst);
  if (!all) return worst;
  if (options.suggest) add_suggestion(*all, options);
  std::optional<std::vector<Compared>> comparisons = comparisons_of(*all, options);
  if (!comparisons || !compare_all(*comparisons)) return ExitStatus::wrong_usage;
  output.write(report_text(*comparisons, options));
  return output.finish() ? ExitStatus::done : ExitStatus::wrong_usage;
}

}  // namespace fingerturn::cli
