#include "cli/commands/compare.hpp"

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

/// The inputs, with missing fingers filled in where that is asked for.
std::optional<std::deque<Analysed>> read_all(const AnnotateOptions& options, ExitStatus& worst) {
  std::deque<Analysed> all;
  for (const std::string& path : options.inputs) {
    ScoreInput input = read_score(path, options);
    worst = std::max(worst, input.status);
    if (input.status != ExitStatus::done) continue;
    Analysis analysis =
        with_difficulties(analysis_of(input.name, input.score, options), input.score);
    all.push_back({std::move(input.name), std::move(input.score), std::move(analysis)});
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
  return fmt::format("as given, {} of {} fingers; the others suggested (?)", given, struck);
}

/// What all passages of a score are called before their titles part, up to a comma.
std::string shared_title(const Score& score) {
  std::string shared = score.passages.front().title;
  for (const Passage& passage : score.passages) {
    const auto parted =
        std::mismatch(shared.begin(), shared.end(), passage.title.begin(), passage.title.end());
    shared.erase(parted.first, shared.end());
  }
  const std::size_t comma = shared.rfind(", ");
  return comma == std::string::npos ? "" : shared.substr(0, comma);
}

/// Adds the passages of a score as fingerings, under what their titles have each for itself.
void add_passages(const Analysed& of, std::vector<Fingering>& fingerings) {
  const std::string shared = shared_title(of.score);
  for (std::size_t p = 0; p < of.score.passages.size(); ++p) {
    const std::string& title = of.score.passages[p].title;
    const std::string own = shared.empty() ? title : title.substr(shared.size() + 2);
    fingerings.push_back(
        {own.empty() ? numbered(p) : own, of.score.passages[p], of.analysis.passages[p]});
  }
}

/// The passages of one score with each other.
Compared within(const Analysed& of) {
  const std::string shared = shared_title(of.score);
  Compared compared{shared.empty() ? of.name : shared, {}, {}};
  add_passages(of, compared.fingerings);
  return compared;
}

/// Every passage of several scores, of which some hold one and others more.
Compared side_by_side(const std::deque<Analysed>& all) {
  Compared compared{title_of(all.front(), 0), {}, {}};
  for (const Analysed& of : all) {
    if (of.score.passages.size() == 1) {
      compared.fingerings.push_back({of.name, of.score.passages[0], of.analysis.passages[0]});
    } else {
      add_passages(of, compared.fingerings);
    }
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

std::string count_words(std::size_t passages) {
  return passages == 1 ? "1 passage" : fmt::format("{} passages", passages);
}

/// The first input that holds another number of passages than the first.
const Analysed* with_other_count(const std::deque<Analysed>& all) {
  const auto other = std::find_if(all.begin(), all.end(), [&all](const Analysed& analysed) {
    return analysed.score.passages.size() != all.front().score.passages.size();
  });
  return other == all.end() ? nullptr : &*other;
}

/// The passages of one input are compared with each other.
std::optional<std::vector<Compared>> comparison_within(const Analysed& of) {
  const std::size_t count = of.score.passages.size();
  if (count >= 2) return std::vector<Compared>{within(of)};
  say(
      fmt::format("{}: there is {} passage in it; name another file to compare it with, or "
                  "compare it with a suggestion by --suggest",
                  of.name, count == 0 ? "no" : "one"));
  return std::nullopt;
}

/// What is to be compared with what; none, and a message, where there is nothing.
std::optional<std::vector<Compared>> comparisons_of(const std::deque<Analysed>& all,
                                                    const AnnotateOptions& options) {
  for (const Analysed& of : all) {
    if (!of.score.passages.empty()) continue;
    say(of.name + ": there is no passage in it to compare");
    return std::nullopt;
  }
  if (all.size() == 1) return comparison_within(all.front());
  std::vector<Compared> comparisons;
  if (const Analysed* other = with_other_count(all)) {
    const bool any_single = std::any_of(
        all.begin(), all.end(), [](const Analysed& of) { return of.score.passages.size() == 1; });
    if (any_single) return std::vector<Compared>{side_by_side(all)};
    say(fmt::format("{} has {} and {} has {}; choose one with --passage", all.front().name,
                    count_words(all.front().score.passages.size()), other->name,
                    count_words(other->score.passages.size())));
    return std::nullopt;
  }
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

bool any_played(const std::vector<Compared>& comparisons) {
  return std::any_of(comparisons.begin(), comparisons.end(),
                     [](const Compared& compared) { return !compared.comparison.hands.empty(); });
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
  Analysis analysis = with_difficulties(analysis_of(score, options), score);
  all.push_back({"suggested, no finger given", std::move(score), std::move(analysis)});
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
  if (!any_played(*comparisons)) return ExitStatus::wrong_usage;  // that has been said
  output.write(report_text(*comparisons, options));
  return output.finish() ? ExitStatus::done : ExitStatus::wrong_usage;
}

}  // namespace fingerturn::cli
