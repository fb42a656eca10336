#include "text/text_out.hpp"

#include "catch.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

/// Text that is handed on piece by piece is the text that was added, however it was added.
using namespace fingerturn;

namespace {

constexpr std::size_t kFarMoreThanABuffer = 100'000;

std::vector<std::string> pieces_of(void (*write)(TextOut&)) {
  std::vector<std::string> pieces;
  TextOut out([&](std::string_view piece) { pieces.emplace_back(piece); });
  write(out);
  out.finish();
  return pieces;
}

std::string joined(const std::vector<std::string>& pieces) {
  std::string text;
  for (const std::string& piece : pieces) text += piece;
  return text;
}

}  // namespace

TEST_CASE("text out: a long text is handed on while it is made, and whole") {
  std::string expected;
  for (std::size_t i = 0; i < kFarMoreThanABuffer; ++i) expected += static_cast<char>('a' + i % 26);
  const auto letters = pieces_of([](TextOut& out) {
    for (std::size_t i = 0; i < kFarMoreThanABuffer; ++i) out.add(static_cast<char>('a' + i % 26));
  });
  CHECK(letters.size() > 2);
  CHECK(joined(letters) == expected);

  std::string at_once;
  TextOut out([&](std::string_view piece) { at_once += piece; });
  out.add(expected);
  out.finish();
  CHECK(at_once == expected);
}

TEST_CASE("text out: the last letter can be taken back though the rest was handed on") {
  // A letter and a comma each time: wherever the buffer fills, the comma is still there to take.
  const auto pieces = pieces_of([](TextOut& out) {
    for (std::size_t i = 0; i < kFarMoreThanABuffer; ++i) {
      out.add('x');
      out.add(',');
      out.take_back(',');
      out.take_back(',');
    }
  });
  CHECK(joined(pieces) == std::string(kFarMoreThanABuffer, 'x'));
}

TEST_CASE("text out: only that letter is taken back, and none where there is none") {
  CHECK(joined(pieces_of([](TextOut& out) {
          out.take_back(',');
          out.add("ab");
          out.take_back(',');
        })) == "ab");
}

TEST_CASE("text out: letters written into room that was asked for stand where they belong") {
  const auto pieces = pieces_of([](TextOut& out) {
    for (std::size_t i = 0; i < kFarMoreThanABuffer; ++i) {
      char* at = out.room_for(10);
      at[0] = '1';
      at[1] = '2';
      out.ends_at(at + 2);
      out.add('-');
    }
  });
  std::string expected;
  for (std::size_t i = 0; i < kFarMoreThanABuffer; ++i) expected += "12-";
  CHECK(joined(pieces) == expected);
}

TEST_CASE("text out: no text at all adds nothing") {
  const auto pieces = pieces_of([](TextOut& out) {
    out.add(std::string_view{});
    out.add('a');
    out.add(std::string_view{});
  });
  CHECK(joined(pieces) == "a");
}
