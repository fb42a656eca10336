#include "fingerturn/practice.hpp"
#include "text/escape.hpp"
#include "text/text_out.hpp"
#include "write/markdown/part.hpp"
#include "write/markdown/tables.hpp"
#include "write/practice/plan_words.hpp"
#include "write/shared/passage_words.hpp"
#include "write/shared/used.hpp"

#include <fmt/format.h>

namespace fingerturn {
namespace {

void add_paragraphs(std::string& out, const std::vector<std::string>& sentences) {
  for (const std::string& sentence : sentences) out += '\n' + escaped_markdown(sentence) + '\n';
}

void add_place(TextFlow& flow, const AnalysedScore& analysed, const PlannedPlace& place,
               std::size_t number, Used& used) {
  const AnalysedPassage piece = analysed[place.passage];
  const std::string minutes =
      place.minutes ? fmt::format(", {} minutes", *place.minutes) : std::string();
  flow.out += fmt::format("\n## {}. {}{}\n", number,
                          escaped_markdown(place_heading(analysed, place)), minutes);
  add_paragraphs(flow.out, {place_reason(piece, place)});
  add_paragraphs(flow.out, place_progress(piece, place));
  const AnalysedScore shown = only_place(analysed, place);
  for (const AnalysedLine line : shown[0]) used.see(line, shown[0].found());
  for (const PagePart& part : page_parts(shown[0])) add_tables(flow, part);
  flow.out += '\n';
  std::size_t step_number = 0;
  for (const PracticeStep& step : place.steps) {
    const StepWords words = words_of(piece, place, step);
    flow.out += fmt::format("{}. **{}**", ++step_number, words.name);
    if (words.is_list) {
      flow.out += '\n';
      for (const std::string& item : words.items) {
        flow.out += fmt::format("   - {}\n", escaped_markdown(item));
      }
    } else {
      flow.out +=
          fmt::format(": {}\n", escaped_markdown(fmt::format("{}", fmt::join(words.items, "; "))));
    }
  }
  flow.hand_on();
}

}  // namespace

std::string write_practice_markdown(const AnalysedScore& analysed, const PracticePlan& plan) {
  return text_of(0, [&](TextOut& text) {
    TextFlow flow{
        [&](std::string_view piece) { text.add(piece); },
        fmt::format("# {}: what to practise first\n", escaped_markdown(title_of(analysed)))};
    add_paragraphs(flow.out, plan_head(analysed, plan));
    if (!plan.places.empty()) {
      flow.out += fmt::format("\n## {}\n\n", escaped_markdown(kBeforeTheKeysHeading));
      for (const std::string_view line : kBeforeTheKeys) flow.out += fmt::format("- {}\n", line);
      flow.out += fmt::format("\n## {}\n\n", escaped_markdown(kStepsHeading));
      for (const StepExplained& step : explained_steps(plan)) {
        flow.out += fmt::format("- **{}**: {}\n", step.name, step.how);
      }
    }
    Used used;
    for (std::size_t i = 0; i < plan.places.size(); ++i) {
      add_place(flow, analysed, plan.places[i], i + 1, used);
    }
    add_paragraphs(flow.out, plan_foot(analysed, plan));
    if (!plan.places.empty()) add_legend(flow.out, legend_of(used));
    flow.out += fmt::format("\n## Caution\n\n{}\n", escaped_markdown(caution()));
    flow.finish();
  });
}

}  // namespace fingerturn
