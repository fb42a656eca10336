#include "fingerturn/practice.hpp"
#include "text/text_out.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"
#include "text/wrap.hpp"
#include "write/practice/plan_words.hpp"
#include "write/shared/passage_words.hpp"
#include "write/shared/used.hpp"
#include "write/text/columns.hpp"
#include "write/text/foot.hpp"
#include "write/text/grid.hpp"
#include "write/text/head.hpp"
#include "write/text/signs.hpp"

#include <algorithm>

#include <fmt/format.h>

namespace fingerturn {
namespace {

class PlanText {
 public:
  PlanText(const AnalysedScore& analysed, const PracticePlan& plan, const TextStyle& style)
      : analysed_(analysed), plan_(plan), style_(style) {}

  void write(TextOut& out) {
    out.add(title_line(fmt::format("{}: what to practise first", title_of(analysed_)), style_));
    add_sentences(out, plan_head(analysed_, plan_));
    if (!plan_.places.empty()) {
      add_before_the_keys(out);
      add_explained_steps(out);
    }
    std::size_t number = 0;
    for (const PlannedPlace& place : plan_.places) add_place(out, place, ++number);
    if (!style_.brief && number > 0) add_legend(out);
    const std::vector<std::string> foot = plan_foot(analysed_, plan_);
    if (!foot.empty()) out.add('\n');
    add_sentences(out, foot);
    out.add('\n');
    if (style_.brief) return out.add(labelled("caution", brief_caution(), style_));
    out.add(emphasised("caution", Emphasis::strong, style_.colour) + '\n');
    out.add(wrapped("", caution(), style_.columns));
  }

 private:
  void add_sentences(TextOut& out, const std::vector<std::string>& sentences) const {
    for (const std::string& sentence : sentences) {
      out.add(wrapped("", printable(sentence), style_.columns));
    }
  }

  void add_before_the_keys(TextOut& out) const {
    out.add('\n' + emphasised(lower_case(kBeforeTheKeysHeading), Emphasis::strong, style_.colour) +
            '\n');
    for (const std::string_view line : kBeforeTheKeys) {
      out.add(wrapped("  ", line, style_.columns));
    }
  }

  void add_explained_steps(TextOut& out) const {
    out.add('\n' + wrapped("", lower_case(kStepsHeading), style_.columns));
    for (const StepExplained& step : explained_steps(plan_)) {
      out.add(wrapped("  ", fmt::format("{}: {}", step.name, step.how), style_.columns));
    }
  }

  void add_place(TextOut& out, const PlannedPlace& place, std::size_t number) {
    const AnalysedPassage piece = analysed_[place.passage];
    std::string heading = fmt::format("{}. {}", number, place_heading(analysed_, place));
    if (place.minutes) heading += fmt::format(", {} minutes", *place.minutes);
    out.add('\n' + title_line(heading, style_));
    out.add(wrapped("   ", printable(place_reason(piece, place)), style_.columns));
    if (style_.detail) out.add(wrapped("   ", place_sum(place), style_.columns));
    for (const std::string& words : place_progress(piece, place)) {
      out.add(wrapped("   ", printable(words), style_.columns));
    }
    add_notes(out, place);
    out.add('\n');
    char letter = 'a';
    for (const PracticeStep& step : place.steps)
      add_step(out, words_of(piece, place, step), letter++);
  }

  void add_notes(TextOut& out, const PlannedPlace& place) {
    const AnalysedScore shown = only_place(analysed_, place);
    for (const AnalysedLine line : shown[0]) used_.see(line, shown[0].found());
    for (const SharedLines& lines : lines_together(shown[0])) {
      draw_systems(out, BarSequence(shown[0], lines), style_);
    }
  }

  void add_legend(TextOut& out) const {
    out.add('\n' + emphasised("legend", Emphasis::strong, style_.colour) + '\n');
    out.add(legend_text(legend_of(used_), style_));
  }

  /// What is one thing, or several in a few words, goes on behind the name.
  void add_step(TextOut& out, const StepWords& step, char letter) const {
    const std::string opening = fmt::format("{}) ", letter);
    if (!step.is_list) {
      const std::string words = fmt::format("{}: {}", step.name, fmt::join(step.items, "; "));
      return out.add(wrapped(opening, printable(words), style_.columns));
    }
    out.add(wrapped(opening, step.name, style_.columns));
    for (const std::string& item : step.items) {
      out.add(wrapped("   - ", printable(item), style_.columns));
    }
  }

  const AnalysedScore& analysed_;
  const PracticePlan& plan_;
  TextStyle style_;
  Used used_;
};

}  // namespace

std::string write_practice_text(const AnalysedScore& analysed, const PracticePlan& plan,
                                const TextStyle& style) {
  TextStyle no_narrower = style;
  no_narrower.few_rows = true;
  no_narrower.columns = std::max(style.columns, kFewestColumns);
  return text_of(0, [&](TextOut& out) { PlanText(analysed, plan, no_narrower).write(out); });
}

}  // namespace fingerturn
