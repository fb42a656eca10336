#include "cli/options/report.hpp"

#include "cli/options/files.hpp"
#include "cli/options/output.hpp"
#include "cli/options/player.hpp"
#include "cli/options/value.hpp"

namespace fingerturn::cli {

void add_report(CLI::App& command, ReportOptions& options) {
  add_files(command, options.files,
            "Files in the passage notation (docs/notation.md) or in MusicXML (.musicxml, .xml, "
            ".mxl); - is standard input");
  add_choice(command, "--format",
             {{"html", Format::html},
              {"json", Format::json},
              {"jsonl", Format::jsonl},
              {"markdown", Format::markdown},
              {"musicxml", Format::musicxml},
              {"passage", Format::passage},
              {"svg", Format::svg},
              {"text", Format::text}},
             options.format,
             "text to read, html to hand out, svg for the picture alone, markdown for study notes, "
             "json or jsonl for programs, passage to write the notation anew, musicxml to get a "
             "MusicXML score back with the analysis under its notes");
  CLI::Option* output = add_output(command, options.output);
  output->type_name("FILE|DIR/")
      ->description(output->get_description() +
                    "; html, svg and markdown also into a folder, a page for each passage and an "
                    "index");
  add_chosen_notes(command, options.notes);
  add_player(command, options.player);
  add_report_look(command, options.look);
}

}  // namespace fingerturn::cli
