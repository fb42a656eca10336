#include "fingerturn/source.hpp"

#include "text/utf8.hpp"

#include <algorithm>
#include <cstdint>
#include <utility>

namespace fingerturn {
namespace {

/// How many of these bytes are this one. In blocks that a byte can count, the compiler takes
/// sixteen at a time.
std::size_t count_of(char wanted, std::string_view bytes) {
  constexpr std::size_t kBlock = 240;
  std::size_t count = 0;
  for (std::size_t at = 0; at < bytes.size(); at += kBlock) {
    std::uint8_t in_block = 0;
    for (const char byte : bytes.substr(at, kBlock)) {
      if (byte == wanted) ++in_block;
    }
    count += in_block;
  }
  return count;
}

std::vector<std::size_t> find_line_starts(std::string_view text) {
  constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
  // Most texts have no carriage returns, and looking for one byte is much faster than for two.
  const std::size_t carriage_returns = count_of('\r', text);
  const bool only_line_feeds = carriage_returns == 0;
  std::vector<std::size_t> starts;
  // A text may be all line ends: growing step by step would take three times the memory.
  starts.reserve(1 + carriage_returns + count_of('\n', text));
  starts.push_back(text.starts_with(kByteOrderMark) ? kByteOrderMark.size() : 0);
  const auto next_end = [&](std::size_t from) {
    return only_line_feeds ? text.find('\n', from) : text.find_first_of("\r\n", from);
  };
  for (std::size_t end = next_end(0); end < text.size(); end = next_end(end + 1)) {
    if (text.substr(end, 2) == "\r\n") ++end;
    starts.push_back(end + 1);
  }
  return starts;
}

}  // namespace

Source::Source(std::string name, std::string text)
    : name_(std::move(name)), text_(std::move(text)), line_starts_(find_line_starts(text_)) {}

std::size_t Source::line_start(std::size_t number) const noexcept {
  if (number == 0 || number > line_starts_.size()) return text_.size();
  return line_starts_[number - 1];
}

std::string_view Source::line_text(std::size_t number) const noexcept {
  const std::size_t begin = line_start(number);
  std::size_t end = line_start(number + 1);
  while (end > begin && (text_[end - 1] == '\n' || text_[end - 1] == '\r')) --end;
  return std::string_view(text_).substr(begin, end - begin);
}

Place Source::place_of(std::size_t offset) const noexcept {
  offset = std::clamp(offset, line_starts_.front(), text_.size());
  const auto after = std::upper_bound(line_starts_.begin(), line_starts_.end(), offset);
  const auto line = static_cast<std::size_t>(after - line_starts_.begin());
  const std::size_t begin = line_starts_[line - 1];
  return {line, 1 + count_code_points(text().substr(begin, offset - begin))};
}

std::string_view Source::text_of(Span span) const noexcept {
  const std::size_t begin = std::min<std::size_t>(span.begin, text_.size());
  const std::size_t end = std::clamp<std::size_t>(span.end, begin, text_.size());
  return text().substr(begin, end - begin);
}

}  // namespace fingerturn
