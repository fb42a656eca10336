#pragma once

#include "cli/terminal.hpp"
#include "fingerturn/report.hpp"

#include <optional>
#include <string>

#include <CLI/App.hpp>

namespace fingerturn::cli {

/// How a text looks, whatever it says.
struct TextLook {
  bool ascii = false;
  std::optional<int> columns;  ///< none for the terminal's width
  Colour colour = Colour::automatic;
  bool brief = false;  ///< without legend, the caution in a sentence
};

/// What a report shows of each note, and how.
struct ReportLook {
  bool detail = false;
  bool cues = false;
  bool trace = false;
  bool words = false;  ///< under the notes of a score words instead of arrows
  bool once = false;   ///< on pages, bars that come again are named
  bool keys = false;   ///< on pages, keys with fingers where the hand takes a place
  Paper paper = Paper::a4;
  TextLook text;
};

void add_text_look(CLI::App& command, TextLook& look);
void add_report_look(CLI::App& command, ReportLook& look);
void add_columns(CLI::App& command, std::optional<int>& columns, const std::string& description);

/// How wide a line of a place may be; none where no width was asked for and it goes to no terminal,
/// so that every place stays on one line there.
std::optional<int> line_columns(std::optional<int> asked, const std::string& output);

/// How a text that goes to this output is to look; an empty one is standard output.
TextStyle text_style(const TextLook& look, const std::string& output);
TextStyle text_style(const ReportLook& look, const std::string& output);

}  // namespace fingerturn::cli
