#include "cli/pages.hpp"

#include "cli/formats.hpp"
#include "cli/messages.hpp"
#include "cli/output.hpp"
#include "cli/report_input.hpp"
#include "text/words.hpp"

#include <algorithm>
#include <cerrno>
#include <filesystem>
#include <memory>
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
    passages[i].title =
        passages.size() == 1 ? input.name : fmt::format("{}, passage {}", input.name, i + 1);
  }
}

Collection collect(const ReportOptions& options) {
  Collection all;
  ScoreInput& together = all.together;
  for (const std::string& path : options.files) {
    ScoreInput input = read_to_report(path, options);
    together.status = std::max(together.status, input.status);
    if (input.status != ExitStatus::done) continue;
    all.any_read = true;
    name_passages(input);
    together.name = input.name;
    std::ranges::move(input.score.passages, std::back_inserter(together.score.passages));
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

/// The pages of a folder: the number keeps names apart, and in order.
std::vector<PageLink> links_to(const Score& score, std::string_view ending) {
  constexpr std::size_t kFewestDigits = 2;
  const std::size_t digits = std::max(kFewestDigits, std::to_string(score.passages.size()).size());
  std::vector<PageLink> links;
  for (std::size_t i = 0; i < score.passages.size(); ++i) {
    const std::string& title = score.passages[i].title;
    links.push_back({fmt::format("{:0{}}-{}.{}", i + 1, digits, name_part(title), ending), title});
  }
  return links;
}

bool make_folder(const std::string& path) {
  std::error_code problem;
  if (files::is_directory(path, problem)) return true;
  // A slash at the end is no name of its own.
  const files::path folder = files::path(path).parent_path();
  if (files::create_directory(folder, problem) || files::is_directory(folder, problem)) return true;
  say(path + ": cannot make this folder: " + problem.message());
  return false;
}

/// A file of the folder, opened before any is written.
std::unique_ptr<Output> opened(const files::path& path, const ReportOptions& options) {
  auto output = std::make_unique<Output>(path.string());
  return output->open(options.files) ? std::move(output) : nullptr;
}

bool write_file(Output& output, std::string_view text) {
  output.write(text);
  return output.finish();
}

ExitStatus write_folder(ScoreInput all, const ReportOptions& options) {
  if (!make_folder(options.output)) return ExitStatus::wrong_usage;
  const files::path folder = options.output;
  const Pages& pages = *options.format->pages;
  const std::vector<PageLink> links = links_to(all.score, pages.ending);
  std::vector<std::unique_ptr<Output>> outputs;
  outputs.reserve(links.size() + 1);
  for (const PageLink& link : links) outputs.push_back(opened(folder / link.file_name, options));
  outputs.push_back(opened(folder / fmt::format("index.{}", pages.index_ending), options));
  if (std::count(outputs.begin(), outputs.end(), nullptr) > 0) return ExitStatus::wrong_usage;
  for (std::size_t i = 0; i < links.size(); ++i) {
    ScoreInput page;
    page.name = all.name;
    page.score.passages.push_back(std::move(all.score.passages[i]));
    if (!write_file(*outputs[i], options.format->write(std::move(page), options)))
      return ExitStatus::wrong_usage;
  }
  const bool done = write_file(*outputs.back(), pages.write_index(links));
  return done ? all.status : ExitStatus::wrong_usage;
}

}  // namespace

ExitStatus write_pages(const ReportOptions& options) {
  const bool folder = is_folder(options.output);
  Output output(options.output);
  if (!folder && !output.open(options.files)) return ExitStatus::wrong_usage;
  Collection all = collect(options);
  if (!all.any_read) return all.together.status;
  if (folder) return write_folder(std::move(all.together), options);
  const ExitStatus status = all.together.status;
  output.write(options.format->write(std::move(all.together), options));
  return output.finish() ? status : ExitStatus::wrong_usage;
}

}  // namespace fingerturn::cli
