#pragma once

#include "text/escape.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace fingerturn {

/// An XML text while it is written, each element on a line of its own. A tag is a name with its
/// attributes, `measure number="1"`; texts are escaped here.
///
///     XmlText xml;
///     xml.open("clef number=\"2\"");
///     xml.add("sign", "F");
///     xml.close();
class XmlText {
 public:
  void open(std::string_view tag);
  void close();
  /// An element without anything in it.
  void add(std::string_view tag);
  void add(std::string_view tag, std::string_view text);
  template <typename Number>
  requires std::is_arithmetic_v<Number>
  void add(std::string_view tag, Number number) {
    add(tag, std::string_view(fmt::format("{}", number)));
  }
  /// What is XML already.
  void add_line(std::string_view xml);

  /// Where the next element begins.
  [[nodiscard]] std::size_t next() const noexcept { return text_.size() + indent(); }
  [[nodiscard]] std::string take() { return std::move(text_); }

 private:
  [[nodiscard]] std::size_t indent() const noexcept { return 2 * open_.size(); }

  std::string text_;
  std::vector<std::string> open_;  ///< the names of the elements that are open
};

}  // namespace fingerturn
