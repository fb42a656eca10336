#include "cli/commands/annotate.hpp"

#include "cli/commands.hpp"
#include "cli/commands/try_fingers.hpp"
#include "cli/faults.hpp"
#include "cli/formats.hpp"
#include "cli/messages.hpp"
#include "cli/options/files.hpp"
#include "cli/options/fingers.hpp"
#include "cli/options/notes.hpp"
#include "cli/output.hpp"
#include "cli/pages.hpp"
#include "cli/report_input.hpp"

#include <algorithm>
#include <cstddef>
#include <memory>
#include <string>
#include <string_view>
#include <utility>

#include <fmt/core.h>

namespace fingerturn::cli {
namespace {

/// One input after another into one output.
class InTurn {
 public:
  InTurn(const ReportOptions& options, Output& output)
      : options_(options), output_(output), progress_(leaves_room_for_progress(options.output)) {}

  /// Where the report of an input fails half-way, what was written of it is taken back.
  ExitStatus write(const std::string& path) {
    progress_.turn_to(++number_, options_.files.size(), path);
    const long before = output_.size();
    const ExitStatus status = status_of_work(path, [&] { return write_report(path); });
    if (status == ExitStatus::done) any_done_ = true;
    if (status != ExitStatus::done && !output_.cut_to(before)) {
      say(path + ": its report is not whole");
    }
    return status;
  }

  [[nodiscard]] bool any_done() const noexcept { return any_done_; }

 private:
  ExitStatus write_report(const std::string& path) {
    ScoreInput input = read_to_report(path, options_, progress_);
    if (input.status != ExitStatus::done) return input.status;
    if (options_.format->parted && any_done_) output_.write("\n");
    progress_.during(
        [&] { options_.format->write(std::move(input), options_, output_.sink(progress_)); });
    return ExitStatus::done;
  }

  const ReportOptions& options_;
  Output& output_;
  Progress progress_;
  std::size_t number_ = 0;
  bool any_done_ = false;
};

ExitStatus write_in_turn(const ReportOptions& options) {
  Output output(options.output);
  if (!output.open(InputFiles(options.files))) return ExitStatus::wrong_usage;
  InTurn reports(options, output);
  ExitStatus worst = ExitStatus::done;
  for (const std::string& path : options.files) worst = std::max(worst, reports.write(path));
  if (reports.any_done() && !output.finish()) return ExitStatus::wrong_usage;
  return worst;
}

/// False, and a message, where the format has no room for what was asked for.
bool fits_format(const ReportOptions& options) {
  const Format& format = *options.format;
  if (format.is_score && options.files.size() > 1) {
    say(fmt::format("--format {} makes one score at a time", format.name));
    return false;
  }
  if (format.is_score && options.fingers.alternatives > 1) {
    say(fmt::format("--format {} makes a score, which has room for one fingering", format.name));
    return false;
  }
  if (options.places && !format.tells_places) {
    say(fmt::format(
        "--format {} has the notes alone, and tells no places; --bars takes the bars of "
        "one, as in --bars 5-8",
        format.name));
    return false;
  }
  return true;
}

}  // namespace

ExitStatus annotate(const ReportOptions& options) {
  if (!can_be_read(options.files) || !fits_format(options)) return ExitStatus::wrong_usage;
  return options.format->pages ? write_pages(options) : write_in_turn(options);
}

Command add_annotate(CLI::App& program) {
  CLI::App* line =
      program.add_subcommand("annotate", "Say for every note of a passage how the forearm turns");
  const auto options = std::make_shared<ReportOptions>();
  add_report(*line, *options);
  add_suggest(*line, options->fingers.suggest);
  line->add_flag("--places", options->places,
                 "Show only the places that ask most, with the bars around, and say why");
  add_settings(*line, options->fingers.settings);
  add_transposition(*line, options->notes);
  line->add_flag("--refinger", options->fingers.refinger,
                 "Suggest all fingers anew, whatever is given");
  line->footer(
      "A passage is typed as it is played, each note with its finger:\n"
      "  echo 'C4:1 D:2 E:3 F:1 G:2 A:3 B:4 C:5' | fingerturn annotate -");
  return {line, [options] {
            return options->fingers.settings.empty() ? annotate(*options) : try_fingers(*options);
          }};
}

}  // namespace fingerturn::cli
