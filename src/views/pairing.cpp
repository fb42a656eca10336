#include "fingerturn/compare.hpp"
#include "text/file_name.hpp"

#include <algorithm>
#include <span>
#include <utility>

#include <fmt/core.h>

/// Which passages of several scores are compared with which.
namespace fingerturn {
namespace {

/// The scores and, last, the suggestion where there is one.
using Scores = std::vector<const AnalysedScore*>;
using Kind = PairingProblem::Kind;

std::string numbered(std::size_t passage) { return fmt::format("passage {}", passage + 1); }

std::string title_of(const AnalysedScore& of, std::size_t passage) {
  const std::string& title = of[passage].written().title;
  if (!title.empty()) return title;
  const std::string name(name_without_path(of.name()));
  return of.size() == 1 ? name : name + ", " + numbered(passage);
}

/// How many notes are struck, and how many of them have a finger that is given.
std::string given_words(const AnalysedPassage& passage) {
  std::size_t struck = 0;
  std::size_t given = 0;
  for (const Line& line : passage.written().lines) {
    for (const Event& event : line.events) {
      if (!passage.found().shows(event.bar)) continue;
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

/// What passages are called before their titles part, up to a comma.
std::string shared_title(std::span<const Passage> passages) {
  std::string shared = passages.front().title;
  for (const Passage& passage : passages) {
    const auto parted =
        std::mismatch(shared.begin(), shared.end(), passage.title.begin(), passage.title.end());
    shared.erase(parted.first, shared.end());
  }
  const std::size_t comma = shared.rfind(", ");
  return comma == std::string::npos ? "" : shared.substr(0, comma);
}

/// Adds passages of a score as fingerings, under what their titles have each for itself.
void add_passages(const AnalysedScore& of, std::size_t begin, std::size_t end,
                  std::vector<NamedPassage>& fingerings) {
  const std::span<const Passage> passages(of.written().passages);
  const std::string shared = shared_title(passages.subspan(begin, end - begin));
  for (std::size_t p = begin; p < end; ++p) {
    const std::string& title = of[p].written().title;
    const std::string own = shared.empty() ? title : title.substr(shared.size() + 2);
    fingerings.push_back({own.empty() ? numbered(p) : own, of[p]});
  }
}

/// Compares, or says where notes differ.
void add_comparison(std::string title, std::vector<NamedPassage> fingerings, ComparedEvents events,
                    PairedScores& paired) {
  if (paired.problem) return;
  if (const std::optional<NotesDiffer> differ = notes_differ(fingerings)) {
    paired.problem = PairingProblem{Kind::notes_differ, 0, render(fingerings, *differ)};
    return;
  }
  paired.comparisons.push_back(compare(std::move(title), std::move(fingerings), events));
}

/// The passages of one score with each other.
PairedScores within(const AnalysedScore& of, ComparedEvents events) {
  PairedScores paired;
  if (of.size() < 2) {
    paired.problem = PairingProblem{Kind::one_passage, 0, {}};
    return paired;
  }
  std::vector<NamedPassage> fingerings;
  add_passages(of, 0, of.size(), fingerings);
  const std::string shared = shared_title(of.written().passages);
  add_comparison(shared.empty() ? of.name() : shared, std::move(fingerings), events, paired);
  return paired;
}

/// Every passage of several scores, of which some hold one and others more.
PairedScores side_by_side(const Scores& all, ComparedEvents events) {
  PairedScores paired;
  std::vector<NamedPassage> fingerings;
  for (const AnalysedScore* of : all) {
    if (of->size() == 1) {
      fingerings.push_back({of->name(), (*of)[0]});
    } else {
      add_passages(*of, 0, of->size(), fingerings);
    }
  }
  add_comparison(title_of(*all.front(), 0), std::move(fingerings), events, paired);
  return paired;
}

/// Passage by passage; all hold as many. One score beside its suggestion needs no name.
PairedScores across(const Scores& all, bool is_alone, ComparedEvents events) {
  PairedScores paired;
  for (std::size_t p = 0; p < all.front()->size(); ++p) {
    std::vector<NamedPassage> fingerings;
    for (const AnalysedScore* of : all) fingerings.push_back({of->name(), (*of)[p]});
    if (is_alone) fingerings.front().name = given_words((*all.front())[p]);
    add_comparison(title_of(*all.front(), p), std::move(fingerings), events, paired);
  }
  return paired;
}

/// The place of the first score of which something holds; none where it holds of none.
template <typename Holds>
std::optional<std::size_t> first_of(const Scores& all, const Holds& holds) {
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const AnalysedScore* of) { return holds(*of); });
  if (found == all.end()) return std::nullopt;
  return static_cast<std::size_t>(found - all.begin());
}

}  // namespace

PairedScores compare_scores(std::span<const AnalysedScore> scores, const AnalysedScore* suggestion,
                            ComparedEvents events) {
  Scores all;
  for (const AnalysedScore& score : scores) all.push_back(&score);
  if (suggestion != nullptr) all.push_back(suggestion);
  const auto failed = [](Kind kind, std::size_t score) {
    return PairedScores{{}, PairingProblem{kind, score, {}}};
  };
  const auto empty = first_of(all, [](const AnalysedScore& of) { return of.size() == 0; });
  if (empty) return failed(Kind::no_passage, *empty);
  if (all.size() == 1) return within(*all.front(), events);
  const std::size_t count = all.front()->size();
  const auto other = first_of(all, [&](const AnalysedScore& of) { return of.size() != count; });
  if (!other) return across(all, scores.size() == 1, events);
  if (first_of(all, [](const AnalysedScore& of) { return of.size() == 1; })) {
    return side_by_side(all, events);
  }
  return failed(Kind::counts_differ, *other);
}

std::vector<Comparison> compare_neighbours(const AnalysedScore& of) {
  std::vector<Comparison> comparisons;
  for (std::size_t begin = 0, end = 0; begin < of.size(); begin = end) {
    const auto is_same_music = [&](std::size_t other) {
      return !notes_differ(std::vector<NamedPassage>{{"", of[begin]}, {"", of[other]}});
    };
    for (end = begin + 1; end < of.size() && is_same_music(end);) ++end;
    std::vector<NamedPassage> fingerings;
    add_passages(of, begin, end, fingerings);
    const std::span<const Passage> passages(of.written().passages);
    std::string title = shared_title(passages.subspan(begin, end - begin));
    if (title.empty()) title = name_without_path(of.name());
    comparisons.push_back(compare(std::move(title), std::move(fingerings)));
  }
  return comparisons;
}

}  // namespace fingerturn
