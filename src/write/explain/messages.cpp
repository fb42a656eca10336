#include "fingerturn/diagnostic_code.hpp"
#include "fingerturn/report.hpp"
#include "text/wrap.hpp"
#include "write/explain/widest_id.hpp"

#include <string>

#include <fmt/core.h>

namespace fingerturn {
namespace {

std::string_view severity_words(Severity severity) {
  return severity == Severity::error ? "an error" : "a warning";
}

/// "An error in a passage, a warning in a score."
std::string where_words(const DiagnosticCode& code) {
  std::string words;
  if (code.in_notation) words = fmt::format("{} in a passage", severity_words(*code.in_notation));
  if (code.in_musicxml) {
    const bool alike = code.in_notation == code.in_musicxml;
    if (!words.empty()) words += alike ? " and " : ", ";
    if (!alike) words += fmt::format("{} ", severity_words(*code.in_musicxml));
    words += "in a score";
  }
  words.front() = 'A';
  return words + '.';
}

/// The lines of the example, each after an indent.
std::string example_lines(const DiagnosticCode& code, std::string_view indent) {
  std::string text(indent);
  for (const char letter : code.example) {
    text += letter;
    if (letter == '\n') text += indent;
  }
  return text + '\n';
}

}  // namespace

std::string write_message(const DiagnosticCode& code, int columns) {
  std::string text = fmt::format("{} ({})\n\n", code.title, code.id);
  text += wrapped("  ", fmt::format("{} {}", where_words(code), code.meaning), columns);
  if (!code.example.empty()) text += "\n  For instance:\n" + example_lines(code, "    ");
  return text + '\n' + wrapped("  What to do: ", code.cure, columns);
}

std::string write_message_list(int columns) {
  std::string text;
  for (const DiagnosticCode& code : diagnostic_codes()) {
    text += wrapped(padded(code.id, widest_id(diagnostic_codes())) + "  ", code.title, columns);
  }
  return text;
}

std::string write_messages_page() {
  constexpr int kPageColumns = 100;
  std::string text = "# The messages\n\n";
  text += wrapped("",
                  "What is said of a passage or a score that is not as it should be ends with a "
                  "word in brackets, such as `[finger-range]`. This page tells for each of these "
                  "words what it means and what to do. After an error nothing is analysed; a "
                  "warning lets the music pass. `fingerturn explain` prints the same, word by "
                  "word, and this page is written by `fingerturn explain --messages --markdown`.",
                  kPageColumns);
  for (const DiagnosticCode& code : diagnostic_codes()) {
    text += fmt::format("\n## `{}`: {}\n\n", code.id, code.title);
    text += wrapped("", fmt::format("*{}* {}", where_words(code), code.meaning), kPageColumns);
    if (!code.example.empty()) text += "\n```text\n" + example_lines(code, "") + "```\n";
    text += '\n' + wrapped("", fmt::format("*What to do:* {}", code.cure), kPageColumns);
  }
  return text;
}

}  // namespace fingerturn
