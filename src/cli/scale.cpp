#include "cli/scale.hpp"

#include "cli/messages.hpp"
#include "cli/output.hpp"
#include "fingerturn/report.hpp"
#include "model/wrap.hpp"

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

/// A sentence as comments of the notation, which fit a terminal of 80 columns.
std::string comment(std::string_view sentence) {
  constexpr std::string_view kOpening = "# ";
  constexpr int kColumns = 76;
  const std::string lines = wrapped("", sentence, kColumns);
  std::string text;
  for (std::size_t begin = 0; begin < lines.size();) {
    const std::size_t end = lines.find('\n', begin) + 1;
    text += kOpening;
    text += lines.substr(begin, end - begin);
    begin = end;
  }
  return text;
}

ExitStatus list(const std::string& path) {
  std::string text;
  for (const std::string& name : handbook_scale_names()) text += name + '\n';
  return write(path, text);
}

}  // namespace

ExitStatus scale(const ScaleCommandOptions& options) {
  if (options.list) return list(options.output);
  if (options.name_words.empty()) {
    return refuse(std::string("name a scale, as in \"B-flat major\"") + kWhereAllAre);
  }
  const ScaleResult result =
      handbook_scale(fmt::format("{}", fmt::join(options.name_words, " ")), options.scale);
  if (!result.ok()) return refuse(result.problem + (result.is_unknown ? kWhereAllAre : ""));
  std::string text;
  for (const std::string& remark : result.score.passages.front().remarks) text += comment(remark);
  return write(options.output, text + write_passage(result.score));
}

}  // namespace fingerturn::cli
