#include "cli/pages.hpp"

#include "cli/faults.hpp"
#include "cli/formats.hpp"
#include "cli/messages.hpp"
#include "cli/output.hpp"
#include "cli/report_input.hpp"
#include "text/file_name.hpp"
#include "text/words.hpp"

#include <algorithm>
#include <filesystem>
#include <string_view>
#include <system_error>
#include <utility>
#include <vector>

#include <fmt/core.h>

namespace fingerturn::cli {
namespace {

namespace files = std::filesystem;

/// The passages of all inputs, and what they are called together.
struct Collection {
  ScoreInput together;  ///< with the gravest status of all
  bool any_read = false;
};

/// Names the passages without a title by their source, now that they leave it.
void name_passages(ScoreInput& input) {
  std::vector<Passage>& passages = input.score.passages;
  for (std::size_t i = 0; i < passages.size(); ++i) {
    if (!passages[i].title.empty()) continue;
    const std::string name(name_without_path(input.name));
    passages[i].title = passages.size() == 1 ? name : fmt::format("{}, passage {}", name, i + 1);
  }
}

Collection collect(const ReportOptions& options, Progress& progress) {
  Collection all;
  ScoreInput& together = all.together;
  std::size_t number = 0;
  for (const std::string& path : options.files) {
    progress.turn_to(++number, options.files.size(), path);
    const ExitStatus status = status_of_work(path, [&] {
      ScoreInput input = read_to_report(path, options, progress);
      if (input.status != ExitStatus::done) return input.status;
      name_passages(input);
      together.name = input.name;
      std::ranges::move(input.score.passages, std::back_inserter(together.score.passages));
      all.any_read = true;
      return input.status;
    });
    together.status = std::max(together.status, status);
  }
  if (options.files.size() > 1) {
    together.name = fmt::format("{} passages", together.score.passages.size());
  }
  return all;
}

bool is_folder(const std::string& path) {
  std::error_code ignored;
  return path.ends_with('/') || files::is_directory(path, ignored);
}

/// A title as part of a file name: letters, digits and hyphens.
std::string name_part(std::string_view title) {
  constexpr std::size_t kLongest = 60;
  std::string name;
  for (const char letter : lower_case(title)) {
    if (letter == '\'') continue;
    if (name.size() == kLongest) break;
    const bool kept = (letter >= 'a' && letter <= 'z') || (letter >= '0' && letter <= '9');
    if (kept) {
      name += letter;
    } else if (!name.empty() && name.back() != '-') {
      name += '-';
    }
  }
  if (name.ends_with('-')) name.pop_back();
  return name.empty() ? "passage" : name;
}

/// "F. Burgmüller, both hands, 33 bars": what is in a page.
std::string detail_of(const Passage& passage) {
  std::string detail = passage.composer.empty() ? "" : passage.composer + ", ";
  if (passage.lines.size() > 1) detail += "both hands, ";
  if (passage.lines.size() == 1) detail += to_string(passage.lines.front().hand) + " hand, ";
  const std::size_t bars = bars_of(passage).size();
  return detail + fmt::format("{} {}", bars, bars == 1 ? "bar" : "bars");
}

/// The pages of a folder: the number keeps names apart, and in order.
std::vector<PageLink> links_to(const Score& score, std::string_view ending) {
  constexpr std::size_t kFewestDigits = 2;
  const std::size_t digits = std::max(kFewestDigits, std::to_string(score.passages.size()).size());
  std::vector<PageLink> links;
  for (std::size_t i = 0; i < score.passages.size(); ++i) {
    const Passage& passage = score.passages[i];
    links.push_back({fmt::format("{:0{}}-{}.{}", i + 1, digits, name_part(passage.title), ending),
                     passage.title, detail_of(passage)});
  }
  return links;
}

bool make_folder(const std::string& path) {
  std::error_code ignored;
  if (files::is_directory(path, ignored)) return true;
  // A slash at the end is no name of its own.
  const files::path folder = files::path(path).parent_path();
  std::error_code problem;
  if (files::create_directory(folder, problem) || files::is_directory(folder, ignored)) return true;
  say(path + ": cannot make this folder: " + problem.message());
  return false;
}

/// Writes a page; where that cannot be done, nothing is left of it.
ExitStatus write_page(ScoreInput input, const std::string& path, const InputFiles& inputs,
                      const ReportOptions& options, Progress& progress) {
  Output output(path);
  if (!output.open(inputs)) return ExitStatus::wrong_usage;
  const ExitStatus status = status_of_work(path, [&] {
    progress.during(
        [&] { options.format->write(std::move(input), options, output.sink(progress)); });
    return ExitStatus::done;
  });
  if (status != ExitStatus::done) return status;
  return output.finish() ? ExitStatus::done : ExitStatus::wrong_usage;
}

/// Whether no file of the folder is an input; says which is.
bool spares_inputs(const std::vector<std::string>& paths, const InputFiles& inputs) {
  return std::ranges::all_of(paths,
                             [&](const std::string& path) { return Output(path).spares(inputs); });
}

/// One page after another, so that only one is open at a time.
ExitStatus write_folder(ScoreInput all, const ReportOptions& options, Progress& progress) {
  if (!make_folder(options.output)) return ExitStatus::wrong_usage;
  const files::path folder = options.output;
  const Pages& pages = *options.format->pages;
  const std::vector<PageLink> links = links_to(all.score, pages.ending);
  std::vector<std::string> paths;
  paths.reserve(links.size() + 1);
  for (const PageLink& link : links) paths.push_back((folder / link.file_name).string());
  paths.push_back((folder / fmt::format("index.{}", pages.index_ending)).string());
  const InputFiles inputs(options.files);
  if (!spares_inputs(paths, inputs)) return ExitStatus::wrong_usage;
  for (std::size_t i = 0; i < links.size(); ++i) {
    progress.turn_to(i + 1, links.size(), paths[i]);
    ScoreInput page;
    page.name = all.name;
    page.index = fmt::format("index.{}", pages.index_ending);
    page.score.passages.push_back(std::move(all.score.passages[i]));
    const ExitStatus status = write_page(std::move(page), paths[i], inputs, options, progress);
    if (status == ExitStatus::wrong_usage) return status;
    all.status = std::max(all.status, status);
  }
  return std::max(all.status, write_whole(paths.back(), pages.write_index(links), inputs));
}

}  // namespace

ExitStatus write_pages(const ReportOptions& options) {
  const bool folder = is_folder(options.output);
  Output output(options.output);
  if (!folder && !output.open(InputFiles(options.files))) return ExitStatus::wrong_usage;
  Progress progress(leaves_room_for_progress(options.output));
  Collection all = collect(options, progress);
  if (!all.any_read) return all.together.status;
  if (folder) return write_folder(std::move(all.together), options, progress);
  const ExitStatus status = all.together.status;
  progress.turn_to(all.together.name);
  progress.during(
      [&] { options.format->write(std::move(all.together), options, output.sink(progress)); });
  return output.finish() ? status : ExitStatus::wrong_usage;
}

}  // namespace fingerturn::cli
