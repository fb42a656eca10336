#include "read/case_file.hpp"

#include <charconv>
#include <optional>
#include <stdexcept>

namespace fingerturn::tests {
namespace {

std::optional<std::string_view> next_line(std::string_view& text) {
  if (text.empty()) return std::nullopt;
  const std::size_t end = text.find('\n');
  const std::string_view line = text.substr(0, end);
  text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
  return line;
}

[[noreturn]] void refuse(const std::string& title, std::string_view why) {
  throw std::runtime_error("case \"" + title + "\": " + std::string(why));
}

/// Puts what an escape stands for behind the text and gives how many characters it took.
std::size_t add_escape(std::string_view escape, std::string& text, const std::string& title) {
  switch (escape.empty() ? '\0' : escape.front()) {
    case 't':
      text += '\t';
      return 1;
    case 'r':
      text += '\r';
      return 1;
    case '\\':
      text += '\\';
      return 1;
    case 'x':
      break;
    default:
      refuse(title, "a backslash must be followed by t, r, x or a backslash");
  }
  constexpr int kHexadecimal = 16;
  unsigned byte = 0;
  const std::string_view digits = escape.substr(1, 2);
  const char* const end = digits.data() + digits.size();
  const auto [stop, problem] = std::from_chars(digits.data(), end, byte, kHexadecimal);
  if (problem != std::errc{} || stop != end || digits.size() != 2) {
    refuse(title, "\\x must be followed by two hexadecimal digits");
  }
  text += static_cast<char>(static_cast<unsigned char>(byte));
  return 3;
}

std::string unescaped(std::string_view line, const std::string& title) {
  std::string text;
  const bool ends = !line.ends_with('\\') || line.ends_with("\\\\");
  if (!ends) line.remove_suffix(1);
  for (std::size_t at = 0; at < line.size(); ++at) {
    if (line[at] != '\\') {
      text += line[at];
    } else {
      at += add_escape(line.substr(at + 1), text, title);
    }
  }
  return ends ? text + '\n' : text;
}

void drop_empty_lines_at_end(std::string& text) {
  while (text.ends_with("\n\n") || text == "\n") text.pop_back();
}

ReadingCase take_case(std::string_view title_line, std::string_view& rest) {
  ReadingCase taken;
  taken.title = title_line.substr(3);
  std::string* expected = nullptr;
  bool any_expected = false;
  while (!rest.empty() && !rest.starts_with("== ")) {
    const std::string_view line = next_line(rest).value();
    if (line == "-- score" || line == "-- messages") {
      any_expected = true;
      taken.score_given |= line == "-- score";
      expected = line == "-- score" ? &taken.score : &taken.messages;
      if (!expected->empty()) refuse(taken.title, "a section stands twice");
    } else if (line.starts_with("--")) {
      refuse(taken.title, "expected -- score or -- messages");
    } else if (expected != nullptr) {
      *expected += std::string(line) + '\n';
    } else {
      taken.text += unescaped(line, taken.title);
    }
  }
  if (!any_expected) refuse(taken.title, "expected -- score or -- messages after the text");
  drop_empty_lines_at_end(taken.score);
  drop_empty_lines_at_end(taken.messages);
  return taken;
}

}  // namespace

std::vector<ReadingCase> cases_in(std::string_view file_text) {
  std::vector<ReadingCase> cases;
  while (const auto line = next_line(file_text)) {
    if (line->starts_with("== ")) {
      cases.push_back(take_case(*line, file_text));
    } else if (!line->empty() && !line->starts_with('#')) {
      refuse(std::string(*line), "expected a comment or == and the title of a case");
    }
  }
  return cases;
}

std::string without_spare_blanks(std::string_view text) {
  std::string tidy;
  while (const auto line = next_line(text)) {
    std::string words;
    for (const char c : *line) {
      if (c != ' ' || (!words.empty() && words.back() != ' ')) words += c;
    }
    while (words.ends_with(' ')) words.pop_back();
    tidy += words + '\n';
  }
  drop_empty_lines_at_end(tidy);
  return tidy;
}

}  // namespace fingerturn::tests
