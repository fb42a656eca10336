#pragma once

#include "cli/exit_status.hpp"
#include "cli/terminal.hpp"
#include "fingerturn/analysis.hpp"
#include "fingerturn/report.hpp"
#include "fingerturn/score.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace fingerturn::cli {

enum class Format : std::uint8_t { text, html, svg, markdown, json, jsonl, musicxml, passage };

/// What the command line of `annotate` asks for.
struct AnnotateOptions {
  std::vector<std::string> inputs;
  Format format = Format::text;
  std::string output;            ///< empty for standard output
  std::optional<Hand> hand;      ///< none for both
  std::optional<BarRange> bars;  ///< none for all
  std::optional<int> passage;    ///< from 1; none for all
  std::optional<int> part;       ///< of a MusicXML score, from 1; none for those for keyboard
  AnalyseOptions analysis;
  bool suggest = false;  ///< fill in missing fingers first
  int fingerings = 1;    ///< how many of each passage, where fingers are filled in
  bool ascii = false;
  bool detail = false;
  bool words = false;  ///< under the notes of a score words instead of arrows
  bool cues = false;
  bool trace = false;
  std::optional<int> columns;  ///< none for the terminal's width
  Colour colour = Colour::automatic;
};

/// The technical analysis of every note of the inputs.
ExitStatus annotate(const AnnotateOptions& options);

/// How the text report is to look.
TextStyle text_style(const AnnotateOptions& options);

/// False, and a message, where standard input is named more than once.
bool can_read_inputs(const AnnotateOptions& options);

}  // namespace fingerturn::cli
