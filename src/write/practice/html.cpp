#include "fingerturn/practice.hpp"
#include "text/escape.hpp"
#include "text/text_out.hpp"
#include "write/page/html_frame.hpp"
#include "write/page/html_passage.hpp"
#include "write/page/watch_list.hpp"
#include "write/practice/plan_words.hpp"
#include "write/shared/passage_words.hpp"
#include "write/shared/used.hpp"

#include <fmt/format.h>

/// The plan for the stand: the staff and the ribbon of each place, and the steps below it.
namespace fingerturn {
namespace {

void add_sentences(std::string& out, const std::vector<std::string>& sentences) {
  for (const std::string& sentence : sentences) add_element(out, "p", sentence);
}

void add_steps(std::string& out, const AnalysedPassage& piece, const PlannedPlace& place) {
  out += "<ol class=\"steps\">\n";
  for (const PracticeStep& step : place.steps) {
    const StepWords words = words_of(piece, place, step);
    out += fmt::format("<li><strong>{}</strong>", words.name);
    if (words.is_list) {
      out += "\n<ul>\n";
      for (const std::string& item : words.items) add_element(out, "li", item);
      out += "</ul>\n";
    } else {
      const std::string items = fmt::format("{}", fmt::join(words.items, "; "));
      out += fmt::format(": {}", escaped_markup(items));
    }
    out += "</li>\n";
  }
  out += "</ol>\n";
}

/// What is said once for all places, side by side where there is room.
void add_said_once(std::string& out, const PracticePlan& plan) {
  out += "<div class=\"once\">\n<section>\n";
  add_element(out, "h2", kBeforeTheKeysHeading);
  out += "<ul>\n";
  for (const std::string_view line : kBeforeTheKeys) add_element(out, "li", line);
  out += "</ul>\n</section>\n<section>\n";
  add_element(out, "h2", kStepsHeading);
  out += "<ul>\n";
  for (const StepExplained& step : explained_steps(plan)) {
    out += fmt::format("<li><strong>{}</strong>: {}</li>\n", step.name, escaped_markup(step.how));
  }
  out += "</ul>\n</section>\n</div>\n";
}

class PlanPage {
 public:
  PlanPage(HtmlPage& page, const AnalysedScore& analysed) : page_(page), analysed_(analysed) {}

  void add(const PlannedPlace& place, std::size_t number) {
    const AnalysedPassage piece = analysed_[place.passage];
    page_.out += fmt::format(
        "<section class=\"place\" aria-labelledby=\"place-{0}\">\n"
        "<h2 id=\"place-{0}\">{0}. <bdi>{1}</bdi>{2}</h2>\n",
        number, escaped_markup(place_heading(analysed_, place)),
        place.minutes ? fmt::format(", {} minutes", *place.minutes) : "");
    add_element(page_.out, "p", place_reason(piece, place));
    add_sentences(page_.out, place_progress(piece, place));
    const AnalysedScore shown = only_place(analysed_, place);
    for (const AnalysedLine line : shown[0]) used_.see(line, shown[0].found());
    // What is to be watched has no numbers here, where no list follows.
    PageWatchList none;
    none.numbers_of_lines.resize(shown[0].size());
    for (const MusicPart& part : music_parts(shown[0], none)) {
      add_music(page_, shown[0], part);
    }
    add_steps(page_.out, piece, place);
    page_.out += "</section>\n";
    page_.hand_on();
  }

  [[nodiscard]] const Used& used() const noexcept { return used_; }

 private:
  HtmlPage& page_;
  const AnalysedScore& analysed_;
  Used used_;
};

void add_page(HtmlPage& page, const AnalysedScore& analysed, const PracticePlan& plan) {
  page.out += "<main>\n";
  add_sentences(page.out, plan_head(analysed, plan));
  if (!plan.places.empty()) add_said_once(page.out, plan);
  PlanPage places(page, analysed);
  for (std::size_t i = 0; i < plan.places.size(); ++i) places.add(plan.places[i], i + 1);
  add_sentences(page.out, plan_foot(analysed, plan));
  if (!plan.places.empty()) add_legend(page, places.used());
  end_page(page);
}

}  // namespace

std::string write_practice_html(const AnalysedScore& analysed, const PracticePlan& plan) {
  return text_of(0, [&](TextOut& out) {
    const std::string title = fmt::format("{}: what to practise first", title_of(analysed));
    HtmlPage page{{[&](std::string_view piece) { out.add(piece); }, page_head(title)}, {}};
    add_page(page, analysed, plan);
  });
}

}  // namespace fingerturn
