#pragma once

#include "fingerturn/report.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace fingerturn {

/// Text on its way out: gathered in a buffer and handed on as that fills, so that a long report is
/// nowhere whole. What is added piece by piece, a few letters each, costs less than in a string,
/// which keeps its end and its size true after every piece (tests/bench).
class TextOut {
 public:
  explicit TextOut(TextSink sink) : sink_(std::move(sink)), buffer_(kRoom) {}

  void add(char letter) {
    make_room(1);
    buffer_[used_++] = letter;
  }
  void add(std::string_view text) {
    if (text.size() > kRoom / 2) return add_long(text);
    make_room(text.size());
    put(text.data(), text.size());
  }
  /// Letters whose count is known while compiling.
  template <std::size_t Count>
  void add(const std::array<char, Count>& letters) {
    make_room(Count);
    put(letters.data(), Count);
  }
  /// Room for so many letters, no more than 16,384; what is written there stands before what is
  /// added next once `ends_at` has said where it ends.
  char* room_for(std::size_t letters) {
    make_room(letters);
    return buffer_.data() + used_;
  }
  void ends_at(const char* end) noexcept { used_ = static_cast<std::size_t>(end - buffer_.data()); }

  /// Takes the last letter away if it is this one.
  void take_back(char letter) noexcept {
    if (used_ > 0 && buffer_[used_ - 1] == letter) --used_;
  }

  /// Hands on all that is left.
  void finish();

 private:
  static constexpr std::size_t kRoom = 32768;

  void make_room(std::size_t letters) {
    if (used_ + letters > kRoom) hand_on();
  }
  void put(const char* letters, std::size_t count) noexcept {
    std::copy_n(letters, count, buffer_.data() + used_);
    used_ += count;
  }
  void add_long(std::string_view text);
  /// All but the last letter, which may have to be taken back.
  void hand_on();

  TextSink sink_;
  std::vector<char> buffer_;
  std::size_t used_ = 0;
};

/// A text for writers that add to a string: what is there already is handed on wherever they say
/// that nobody looks back at it.
struct TextFlow {
  const TextSink& sink;
  std::string out;

  /// Hands it on where it is worth it.
  void hand_on() {
    constexpr std::size_t kWorthIt = 65536;
    if (out.size() >= kWorthIt) finish();
  }
  void finish() {
    sink(out);
    out.clear();
  }
};

/// Hands on all that `write` adds.
template <typename Write>
void write_to(const TextSink& sink, const Write& write) {
  TextOut out(sink);
  write(out);
  out.finish();
}

/// All that `write` adds, as one text; room is made for so many letters beforehand.
template <typename Write>
std::string text_of(std::size_t expected_size, const Write& write) {
  std::string text;
  text.reserve(expected_size);
  write_to([&](std::string_view piece) { text += piece; }, write);
  return text;
}

}  // namespace fingerturn
