#include "fingerturn/practice.hpp"
#include "score/timeline.hpp"
#include "write/passage/passage.hpp"
#include "write/practice/sheet.hpp"
#include "write/shared/passage_words.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <map>
#include <utility>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// Sheets one after another in one passage, whose bars are counted anew.
class JoinedSheets {
 public:
  explicit JoinedSheets(std::string title) { joined_.title = std::move(title); }

  void add(PracticeSheet sheet) {
    Passage& passage = sheet.passage;
    std::map<std::int32_t, std::int32_t> numbers;
    for (const std::int32_t bar : bars_of(passage)) numbers[bar] = ++bars_;
    const std::int32_t first = numbers.begin()->second;
    joined_.notes.push_back({first, std::move(sheet.words)});
    move_changes(passage.keys, numbers, joined_.keys);
    move_changes(passage.tempos, numbers, joined_.tempos);
    for (Line& line : passage.lines) {
      for (Event& event : line.events) event.bar = numbers.at(event.bar);
      // What comes next is no part of it.
      line.events.back().breath_after = true;
      Line& to = lines_[line.hand == Hand::right ? 0 : 1];
      for (const BarLine& bar_line : line.bar_lines) {
        to.bar_lines.push_back({bar_line.before_event + to.events.size(), bar_line.style});
      }
      std::ranges::move(line.events, std::back_inserter(to.events));
      to.bar_lines.push_back({to.events.size(), BarLineStyle::double_bar});
    }
  }

  Passage take() {
    lines_[0].hand = Hand::right;
    lines_[1].hand = Hand::left;
    for (Line& line : lines_) {
      if (!line.events.empty()) joined_.lines.push_back(std::move(line));
    }
    settle_changes(joined_);
    set_onsets(joined_);
    return std::move(joined_);
  }

 private:
  template <typename Value>
  static void move_changes(const std::vector<FromBar<Value>>& from,
                           const std::map<std::int32_t, std::int32_t>& numbers,
                           std::vector<FromBar<Value>>& to) {
    for (const FromBar<Value>& change : from) {
      const auto bar = numbers.lower_bound(change.bar);
      if (bar != numbers.end()) to.push_back({bar->second, change.value});
    }
  }

  Passage joined_;
  std::array<Line, 2> lines_;
  std::int32_t bars_ = 0;
};

}  // namespace

std::string write_practice_passages(const AnalysedScore& analysed, const PracticePlan& plan) {
  Score score;
  std::vector<std::string> comments;
  for (PracticeSheet& sheet : sheets_of(analysed, plan)) {
    score.passages.push_back(std::move(sheet.passage));
    comments.push_back(std::move(sheet.comments));
  }
  return score.passages.empty() ? "" : write_passage(score, comments);
}

std::string write_practice_musicxml(const AnalysedScore& analysed, const PracticePlan& plan) {
  std::vector<PracticeSheet> sheets = sheets_of(analysed, plan);
  if (sheets.empty()) return {};
  JoinedSheets joined(fmt::format("{}: what to practise first", title_of(analysed)));
  for (PracticeSheet& sheet : sheets) joined.add(std::move(sheet));
  Score score{{joined.take()}};
  if (!musicxml_problem(score).empty()) return {};
  return write_musicxml(AnalysedScore(analysed.name(), std::move(score)), MusicXmlStyle{});
}

}  // namespace fingerturn
