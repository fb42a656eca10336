#include "write/musicxml/scan.hpp"

#include <algorithm>

namespace fingerturn {
namespace {

constexpr std::string_view kBlanks = " \t\r\n";
constexpr std::size_t kNowhere = std::string_view::npos;

std::string_view without_blanks_before(std::string_view text) {
  text.remove_prefix(std::min(text.find_first_not_of(kBlanks), text.size()));
  return text;
}

/// What a tag of these bytes, both angle brackets included, is; nothing where it has no name.
std::optional<XmlTag> tag_of(std::string_view bytes, std::size_t begin) {
  XmlTag tag;
  tag.begin = begin;
  tag.end = begin + bytes.size();
  std::string_view inner = bytes.substr(1, bytes.size() - 2);
  if (!inner.empty() && inner.front() == '/') {
    tag.kind = XmlTagKind::closing;
    inner.remove_prefix(1);
  } else if (!inner.empty() && inner.back() == '/') {
    tag.kind = XmlTagKind::alone;
    inner.remove_suffix(1);
  }
  tag.name = inner.substr(0, inner.find_first_of(kBlanks));
  tag.attributes = inner.substr(tag.name.size());
  return tag.name.empty() ? std::nullopt : std::optional(tag);
}

}  // namespace

std::optional<XmlTag> XmlScan::next() {
  while (!broken_) {
    place_ = text_.find('<', place_);
    if (place_ == kNowhere) break;
    if (at("<!") || at("<?")) {
      broken_ = !skip_what_is_no_tag();
      continue;
    }
    const std::optional<std::size_t> end = end_of_tag();
    const std::optional<XmlTag> tag =
        end ? tag_of(text_.substr(place_, *end - place_), place_) : std::nullopt;
    broken_ = !tag;
    if (tag) place_ = tag->end;
    return tag;
  }
  place_ = text_.size();
  return std::nullopt;
}

bool XmlScan::skip_past(std::string_view ending) {
  const std::size_t found = text_.find(ending, place_);
  if (found == kNowhere) return false;
  place_ = found + ending.size();
  return true;
}

bool XmlScan::skip_what_is_no_tag() {
  constexpr std::string_view kComment = "<!--";
  if (at(kComment)) {
    place_ += kComment.size();
    return skip_past("-->");
  }
  if (at("<![CDATA[")) return skip_past("]]>");
  if (at("<?")) return skip_past("?>");
  return skip_declaration();
}

/// The DOCTYPE, whose inner part in square brackets has declarations, comments and instructions of
/// its own.
bool XmlScan::skip_declaration() {
  bool inside = false;
  ++place_;
  while (place_ < text_.size()) {
    const char byte = text_[place_];
    if (inside && (at("<!--") || at("<?"))) {
      if (!skip_what_is_no_tag()) return false;
      continue;
    }
    ++place_;
    if (byte == '"' || byte == '\'') {
      if (!skip_past(std::string_view(&byte, 1))) return false;
    } else if (byte == '[') {
      inside = true;
    } else if (byte == ']') {
      inside = false;
    } else if (byte == '>' && !inside) {
      return true;
    }
  }
  return false;
}

/// The place after the bracket that closes the tag at hand; brackets in quotes count as text.
std::optional<std::size_t> XmlScan::end_of_tag() const {
  std::size_t place = place_ + 1;
  while (true) {
    place = text_.find_first_of("<>\"'", place);
    if (place == kNowhere || text_[place] == '<') return std::nullopt;
    if (text_[place] == '>') return place + 1;
    place = text_.find(text_[place], place + 1);
    if (place == kNowhere) return std::nullopt;
    ++place;
  }
}

std::optional<std::string_view> attribute_of(const XmlTag& tag, std::string_view name) {
  std::string_view rest = without_blanks_before(tag.attributes);
  while (!rest.empty()) {
    const std::size_t equals = rest.find('=');
    if (equals == kNowhere) return std::nullopt;
    std::string_view key = rest.substr(0, equals);
    key = key.substr(0, key.find_first_of(kBlanks));
    rest = without_blanks_before(rest.substr(equals + 1));
    if (rest.empty() || (rest.front() != '"' && rest.front() != '\'')) return std::nullopt;
    const std::size_t end = rest.find(rest.front(), 1);
    if (end == kNowhere) return std::nullopt;
    if (key == name) return rest.substr(1, end - 1);
    rest = without_blanks_before(rest.substr(end + 1));
  }
  return std::nullopt;
}

}  // namespace fingerturn
