#include "cli/commands/scale.hpp"

#include "cli/messages.hpp"
#include "cli/output.hpp"
#include "write/passage/passage.hpp"

#include <array>
#include <string>
#include <string_view>

#include <fmt/format.h>

namespace fingerturn::cli {
namespace {

constexpr const char* kWhereAllAre = "; fingerturn scale --list lists them";

ExitStatus refuse(std::string_view problem) {
  say(problem);
  return ExitStatus::wrong_usage;
}

ExitStatus write(const std::string& path, std::string_view text) {
  Output output(path);
  if (!output.open({})) return ExitStatus::wrong_usage;
  output.write(text);
  return output.finish() ? ExitStatus::done : ExitStatus::wrong_usage;
}

ExitStatus list(const ScaleCommandOptions& options) {
  if (!options.name_words.empty()) {
    return refuse("--list lists all scales; leave the name or --list away");
  }
  std::string text;
  for (const std::string& name : handbook_scale_names()) text += name + '\n';
  return write(options.output, text);
}

}  // namespace

ExitStatus scale(const ScaleCommandOptions& options) {
  if (options.list) return list(options);
  if (options.name_words.empty()) {
    return refuse(std::string("name a scale, as in \"B-flat major\"") + kWhereAllAre);
  }
  const ScaleResult result =
      handbook_scale(fmt::format("{}", fmt::join(options.name_words, " ")), options.scale);
  if (!result.ok()) return refuse(result.problem + (result.is_unknown ? kWhereAllAre : ""));
  std::array<std::string, 1> comments;
  for (const std::string& remark : result.score.passages.front().remarks) {
    comments.front() += comment_lines(remark);
  }
  return write(options.output, write_passage(result.score, comments));
}

}  // namespace fingerturn::cli
