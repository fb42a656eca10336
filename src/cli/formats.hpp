#pragma once

#include "cli/options/report.hpp"
#include "cli/score_input.hpp"
#include "fingerturn/report.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace fingerturn::cli {

/// How reports go on pages: all inputs together on one, or each passage on its own in a folder with
/// an index.
struct Pages {
  std::string_view ending;  ///< of the name of a page in a folder
  std::string_view index_ending;
  std::string (*write_index)(std::span<const PageLink> links);
};

/// A format of reports.
struct Format {
  std::string_view name;
  std::string_view purpose;  ///< what it is for, in the words of help
  void (*write)(ScoreInput input, const ReportOptions& options, const TextSink& sink);
  std::optional<Pages> pages = std::nullopt;  ///< none: a report for each input, in turn
  bool parted = false;       ///< an empty line stands between the reports of two inputs
  bool is_score = false;     ///< of one passage, which may be the document of a score itself
  bool tells_places = true;  ///< false: it has only the notes, one after another
};

/// All formats, in the order of help.
std::span<const Format> formats() noexcept;

}  // namespace fingerturn::cli
