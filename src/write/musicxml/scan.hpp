#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

/// The tags of an XML text with their places, for a writer that must leave every other byte as it
/// is. Comments, CDATA sections, processing instructions and the DOCTYPE are passed over; what
/// stands in a tag is not decoded.
namespace fingerturn {

enum class XmlTagKind : std::uint8_t { opening, closing, alone };

/// `<name attributes>`, `</name>` or `<name attributes/>`, from `begin` to `end` in the text.
struct XmlTag {
  XmlTagKind kind = XmlTagKind::opening;
  std::string_view name;
  std::string_view attributes;
  std::size_t begin = 0;
  std::size_t end = 0;
};

/// Goes through a text from tag to tag. Any bytes may come; the text is looked at once.
///
///     XmlScan scan("<note><chord/></note>");
///     while (const std::optional<XmlTag> tag = scan.next()) see(tag->name);
///     if (scan.broken()) return;
class XmlScan {
 public:
  explicit XmlScan(std::string_view text) : text_(text) {}

  /// The next tag; nothing at the end of the text, or where it cannot be XML.
  std::optional<XmlTag> next();
  /// Whether the scan stopped because something was not closed or no tag.
  [[nodiscard]] bool broken() const noexcept { return broken_; }

 private:
  bool skip_past(std::string_view ending);
  bool skip_what_is_no_tag();
  bool skip_declaration();
  std::optional<std::size_t> end_of_tag() const;
  [[nodiscard]] bool at(std::string_view beginning) const {
    return text_.substr(place_, beginning.size()) == beginning;
  }

  std::string_view text_;
  std::size_t place_ = 0;
  bool broken_ = false;
};

/// The value of an attribute as it is written between its quotes; nothing where there is none.
std::optional<std::string_view> attribute_of(const XmlTag& tag, std::string_view name);

/// Blanks as XML has them: space, tab, line feed, carriage return.
constexpr bool is_xml_blank(char byte) {
  return byte == ' ' || byte == '\t' || byte == '\n' || byte == '\r';
}

}  // namespace fingerturn
