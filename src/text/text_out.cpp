#include "text/text_out.hpp"

namespace fingerturn {

void TextOut::add_long(std::string_view text) {
  while (!text.empty()) {
    const std::string_view piece = text.substr(0, kRoom / 2);
    add(piece);
    text.remove_prefix(piece.size());
  }
}

void TextOut::hand_on() {
  if (used_ == 0) return;
  const char last = buffer_[used_ - 1];
  sink_({buffer_.data(), used_ - 1});
  buffer_[0] = last;
  used_ = 1;
}

void TextOut::finish() {
  sink_({buffer_.data(), used_});
  used_ = 0;
}

}  // namespace fingerturn
