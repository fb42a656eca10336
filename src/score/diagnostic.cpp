#include "fingerturn/diagnostic.hpp"

#include "text/cells.hpp"
#include "text/utf8.hpp"

#include <algorithm>
#include <utility>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// How wide the part of a source line is that is shown, and how much of it before the mark, in
/// cells. Of a longer line no more code points than that are shown either: some take no cell.
constexpr std::size_t kWindow = 76;
constexpr std::size_t kBeforeMark = 40;
constexpr std::size_t kLongestCodePoint = 4;  // bytes
constexpr std::string_view kIndent = "  ";
constexpr std::string_view kCut = "...";

struct Window {
  std::string before;  ///< what stands before the mark
  std::string marked;
  std::string after;
};

bool is_continuation_byte(char byte) { return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U; }

std::string_view drop_code_points(std::string_view text, std::size_t count) {
  for (; count > 0 && !text.empty(); --count) text.remove_prefix(first_code_point(text).bytes);
  return text;
}

/// As much of the beginning of a text as fits.
std::string_view beginning_of(std::string_view text, std::size_t room) {
  return first_cells(text.substr(0, text.size() - drop_code_points(text, room).size()), room);
}

/// As much of the end of a text as fits; looks at no more of it than that.
std::string_view end_of(std::string_view text, std::size_t room) {
  std::size_t begin = text.size() - std::min(text.size(), kLongestCodePoint * room);
  while (begin > 0 && begin < text.size() && is_continuation_byte(text[begin])) ++begin;
  text.remove_prefix(begin);
  const std::size_t length = count_code_points(text);
  if (length > room) text = drop_code_points(text, length - room);
  while (count_cells(text) > room) text = drop_code_points(text, 1);
  return text;
}

bool is_longer_than(std::string_view text, std::size_t room) {
  return text.size() > kLongestCodePoint * room || count_cells(text) > room;
}

/// Cuts a long line down to the surroundings of the marked place. A line may be as long as a
/// file, so only those are looked at.
Window window_of(std::string_view line, std::size_t mark_begin, std::size_t mark_end) {
  std::string_view before = line.substr(0, mark_begin);
  std::string_view marked = line.substr(mark_begin, mark_end - mark_begin);
  std::string_view after = line.substr(mark_end);
  Window window;
  if (is_longer_than(line, kWindow)) {
    const std::string_view near = end_of(before, kBeforeMark);
    if (near.size() < before.size()) window.before = kCut;
    before = near;
    const std::size_t room = kWindow - count_cells(before);
    const std::string_view shown = beginning_of(marked, room);
    const std::string_view rest = beginning_of(after, room - count_cells(shown));
    if (shown.size() < marked.size() || rest.size() < after.size()) window.after = kCut;
    marked = shown;
    after = rest;
  }
  window.before += printable(before);
  window.marked = printable(marked);
  window.after = printable(after) + window.after;
  return window;
}

/// Blanks as wide as the text; tabs stay tabs, so that the mark stands where the eye is led.
std::string blanks_for(std::string_view text) {
  std::string blanks;
  while (!text.empty()) {
    const std::string_view letter = text.substr(0, first_code_point(text).bytes);
    if (letter == "\t") {
      blanks += '\t';
    } else {
      blanks.append(count_cells(letter), ' ');
    }
    text.remove_prefix(letter.size());
  }
  return blanks;
}

std::string marked_line(const Source& source, const Diagnostic& diagnostic, std::size_t line) {
  if (source.text().empty()) return {};
  const std::string_view text = source.line_text(line);
  const std::size_t start = source.line_start(line);
  const std::size_t begin = std::min<std::size_t>(diagnostic.span.begin - start, text.size());
  const std::size_t end = std::clamp<std::size_t>(
      std::max(diagnostic.span.end, diagnostic.span.begin) - start, begin, text.size());
  const Window window = window_of(text, begin, end);
  const std::size_t carets = std::max<std::size_t>(1, count_cells(window.marked));
  return fmt::format("{0}{1}{2}{3}\n{0}{4}{5}\n", kIndent, window.before, window.marked,
                     window.after, blanks_for(window.before), std::string(carets, '^'));
}

}  // namespace

void Diagnostics::add(Diagnostic diagnostic) {
  const bool is_error = diagnostic.severity == Severity::error;
  ++(is_error ? errors : warnings);
  if (kept.size() == kMostDiagnostics && is_error) {
    const auto warning = std::find_if(kept.rbegin(), kept.rend(), [](const Diagnostic& earlier) {
      return earlier.severity == Severity::warning;
    });
    if (warning != kept.rend()) kept.erase(std::next(warning).base());
  }
  if (kept.size() < kMostDiagnostics) kept.push_back(std::move(diagnostic));
}

void Diagnostics::sort() {
  std::stable_sort(kept.begin(), kept.end(), [](const Diagnostic& left, const Diagnostic& right) {
    return left.span.begin < right.span.begin;
  });
}

std::string full_message(const Diagnostic& diagnostic) {
  std::string text = diagnostic.message;
  const std::string place = to_string(diagnostic.where);
  if (!place.empty()) text += ", in " + place;
  const DiagnosticCode* code = find_diagnostic_code(diagnostic.code);
  if (code != nullptr && !code->outcome.empty()) text += fmt::format("; {}", code->outcome);
  return text;
}

std::string render(const Source& source, const Diagnostic& diagnostic) {
  const Place place = source.place_of(diagnostic.span.begin);
  const std::string_view severity = diagnostic.severity == Severity::error ? "error" : "warning";
  std::string text =
      fmt::format("{}:{}:{}: {}: {} [{}]\n", printable(source.name()), place.line, place.column,
                  severity, printable(full_message(diagnostic)), diagnostic.code);
  text += marked_line(source, diagnostic, place.line);
  if (!diagnostic.hint.empty()) {
    text += fmt::format("{}hint: {}\n", kIndent, printable(diagnostic.hint));
  }
  return text;
}

std::string render(const Source& source, const Diagnostics& diagnostics) {
  std::string text;
  for (const Diagnostic& diagnostic : diagnostics.kept) text += render(source, diagnostic);
  const std::size_t more = diagnostics.errors + diagnostics.warnings - diagnostics.kept.size();
  if (more > 0) text += fmt::format("{}: {} more\n", printable(source.name()), more);
  return text;
}

std::string first_error(const Source& source, const Diagnostics& diagnostics) {
  const auto error =
      std::find_if(diagnostics.kept.begin(), diagnostics.kept.end(),
                   [](const Diagnostic& entry) { return entry.severity == Severity::error; });
  if (error == diagnostics.kept.end()) return "it could not be read";
  const Place place = source.place_of(error->span.begin);
  return fmt::format("line {}, column {}: {} [{}]", place.line, place.column, full_message(*error),
                     error->code);
}

}  // namespace fingerturn
