#include "fingerturn/check.hpp"
#include "fingerturn/read.hpp"
#include "score/finding_key.hpp"

#include <algorithm>
#include <iterator>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace fingerturn {
namespace {

using CheckJson = nlohmann::json;

/// A text of an object; none where it is none.
std::optional<std::string> text_in(const CheckJson& object, const char* name) {
  const auto found = object.find(name);
  if (found == object.end() || !found->is_string()) return std::nullopt;
  return found->get<std::string>();
}

std::optional<double> number_in_json(const CheckJson& object, const char* name) {
  const auto found = object.find(name);
  const bool is_number = found != object.end() && found->is_number();
  return is_number ? std::optional(found->get<double>()) : std::nullopt;
}

/// None where the object is no finding.
std::optional<std::string> key_in(const CheckJson& finding) {
  if (!finding.is_object()) return std::nullopt;
  const auto code = text_in(finding, "code");
  const auto message = text_in(finding, "message");
  if (!code || !message) return std::nullopt;
  return finding_key(*code, number_in_json(finding, "passage"),
                     text_in(finding, "hand").value_or(""), number_in_json(finding, "bar"),
                     number_in_json(finding, "beat"), *message);
}

/// Adds the findings of a line; false where it is no line of a check.
bool add_line(std::string_view text, CheckBaseline& baseline) {
  const CheckJson line = CheckJson::parse(text, nullptr, false);
  if (line.is_discarded() || !line.is_object()) return false;
  if (text_in(line, "format") != "fingerturn-check") return false;
  const auto source = text_in(line, "source");
  const auto findings = line.find("findings");
  // The line for all, and those of files that could not be read, know of none.
  if (!source || findings == line.end()) return true;
  if (!findings->is_array()) return false;
  std::vector<std::string>& known = baseline.known[*source];
  for (const CheckJson& finding : *findings) {
    std::optional<std::string> key = key_in(finding);
    if (!key) return false;
    known.push_back(std::move(*key));
  }
  return true;
}

}  // namespace

CheckBaselineResult read_check_baseline(const Source& source) {
  if (source.text().size() > kLargestMusicXml) {
    return {{},
            fmt::format("1: expected at most {} bytes, found {}", kLargestMusicXml,
                        source.text().size())};
  }
  CheckBaselineResult result;
  for (std::size_t line = 1; line <= source.line_count(); ++line) {
    const std::string_view text = source.line_text(line);
    if (text.empty()) continue;
    if (add_line(text, result.baseline)) continue;
    return {{}, fmt::format("{}: expected a line as check --format jsonl writes it", line)};
  }
  for (auto& [name, known] : result.baseline.known) std::ranges::sort(known);
  return result;
}

}  // namespace fingerturn
