#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace fingerturn {

/// A stretch of a source text, as byte offsets: `begin` inclusive, `end` exclusive.
/// Readers promise `begin <= end <= size of the text` for every span they give out.
struct Span {
  std::uint32_t begin = 0;
  std::uint32_t end = 0;

  friend bool operator==(const Span&, const Span&) = default;
};

/// A place a person can find: line and column, both counted from 1.
/// Columns count code points, so an accented letter is one column.
struct Place {
  std::size_t line = 1;
  std::size_t column = 1;

  friend bool operator==(const Place&, const Place&) = default;
};

/// A text that came in, with the name it came under. It owns the text; nothing is
/// read from the disk here. A line ends at LF, CR LF or a lone CR. A byte order mark at the
/// beginning belongs to no line.
///
///     Source source("warmup.passage", "hand: left\nC4:1");
///     source.place_of(11);  // line 2, column 1
///     source.line_text(2);  // "C4:1"
class Source {
 public:
  Source(std::string name, std::string text);

  [[nodiscard]] const std::string& name() const noexcept { return name_; }
  [[nodiscard]] std::string_view text() const noexcept { return text_; }
  [[nodiscard]] std::size_t line_count() const noexcept { return line_starts_.size(); }

  /// The line `number` (from 1) without its line ending; empty past the last line.
  [[nodiscard]] std::string_view line_text(std::size_t number) const noexcept;
  /// The byte offset at which line `number` (from 1) begins; the size of the text past the last.
  [[nodiscard]] std::size_t line_start(std::size_t number) const noexcept;
  /// The place of a byte offset; an offset past the end is the place of the end.
  [[nodiscard]] Place place_of(std::size_t offset) const noexcept;
  /// The text a span covers; what lies past the end is cut off.
  [[nodiscard]] std::string_view text_of(Span span) const noexcept;

 private:
  std::string name_;
  std::string text_;
  std::vector<std::size_t> line_starts_;
};

}  // namespace fingerturn
