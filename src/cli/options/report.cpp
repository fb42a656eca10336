#include "cli/options/report.hpp"

#include "cli/formats.hpp"
#include "cli/messages.hpp"
#include "cli/options/files.hpp"
#include "cli/options/format.hpp"
#include "cli/options/output.hpp"
#include "cli/options/player.hpp"

#include <string_view>
#include <vector>

#include <fmt/core.h>

namespace fingerturn::cli {
namespace {

std::vector<std::string_view> names_of_pages() {
  std::vector<std::string_view> names;
  for (const Format& format : formats()) {
    if (format.pages) names.push_back(format.name);
  }
  return names;
}

}  // namespace

void add_report(CLI::App& command, ReportOptions& options) {
  add_files(command, options.files,
            "Files in the passage notation (docs/notation.md) or in MusicXML (.musicxml, .xml, "
            ".mxl); - is standard input");
  add_format(command, formats(), options.format);
  CLI::Option* output = add_output(command, options.output);
  output->type_name("FILE|DIR/")
      ->description(fmt::format("{}; {} also into a folder, a page for each passage and an index",
                                output->get_description(), listed(names_of_pages(), "and")));
  add_chosen_notes(command, options.notes);
  add_player(command, options.player);
  add_report_look(command, options.look);
}

}  // namespace fingerturn::cli
