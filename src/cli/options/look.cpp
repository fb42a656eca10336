#include "cli/options/look.hpp"

#include "cli/options/value.hpp"

#include <algorithm>

namespace fingerturn::cli {

void add_columns(CLI::App& command, std::optional<int>& columns, const std::string& description) {
  constexpr int kMostColumns = 1000;
  command.add_option("--columns", columns, description)
      ->check(number_from(kFewestColumns, kMostColumns))
      ->type_name("N");
}

void add_text_look(CLI::App& command, TextLook& look) {
  command.add_flag("--ascii", look.ascii, "Use < and > instead of arrows, and no other signs");
  command.add_flag("--brief", look.brief, "Leave out the legend, and shorten the caution");
  add_columns(command, look.columns,
              "Make the text this wide; else as wide as the terminal, or 80");
  add_choice(command, "--color",
             {{"always", Colour::always}, {"auto", Colour::automatic}, {"never", Colour::never}},
             look.colour, "Colour on a terminal (auto), always or never");
}

void add_report_look(CLI::App& command, ReportLook& look) {
  command.add_flag("--detail", look.detail, "Give the reason for every note, in a sentence");
  command.add_flag("--cues", look.cues, "Give every note a short line for practising");
  command.add_flag("--trace", look.trace, "Draw the swing of the forearm in text");
  command.add_flag("--words", look.words,
                   "Under the notes of a score, write words instead of arrows");
  command.add_flag("--once", look.once,
                   "On pages, name bars that come again, as in 29-31 as 4-6, instead of drawing "
                   "them");
  command.add_flag("--keys", look.keys,
                   "On pages, draw the keys with their fingers where a hand takes a place, for "
                   "beginners");
  add_choice(command, "--paper",
             {{"a4", Paper::a4},
              {"a4-landscape", Paper::a4_landscape},
              {"letter", Paper::letter},
              {"letter-landscape", Paper::letter_landscape}},
             look.paper, "The sheets of the picture alone (a4); a page fits what it is printed on");
  add_text_look(command, look.text);
}

TextStyle text_style(const TextLook& look, const std::string& output) {
  TextStyle style;
  style.columns = look.columns.value_or(terminal_columns());
  style.ascii = look.ascii;
  style.brief = look.brief;
  style.colour = output.empty() ? wants_colour(look.colour) : look.colour == Colour::always;
  return style;
}

TextStyle text_style(const ReportLook& look, const std::string& output) {
  TextStyle style = text_style(look.text, output);
  style.detail = look.detail;
  style.cues = look.cues;
  style.trace = look.trace;
  return style;
}

std::optional<int> line_columns(std::optional<int> asked, const std::string& output) {
  if (asked || !output.empty() || !writes_to_terminal()) return asked;
  return std::max(terminal_columns(), kFewestColumns);
}

}  // namespace fingerturn::cli
