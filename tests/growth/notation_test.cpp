#include "catch.hpp"
#include "fingerturn/read.hpp"
#include "growth/growth.hpp"
#include "growth/work.hpp"

#include <cstddef>
#include <string>
#include <vector>

/// Reading the notation takes time in proportion to the passage, whatever stands in it very many
/// times: each header, sign and letter, alone and together with each other.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

/// All that can stand in a passage. In place of @ stands a number that rises each time.
const std::vector<std::string> kPieces{
    "# remark\n",
    "composer: Lo\n",
    "passage: La\n",
    "source: Li\n",
    "meter: 4/4\n",
    "tempo: 60\n",
    "tempo: 1/8. = 60\n",
    "reach: 12\n",
    "key: D major\n",
    "key: 3 flats\n",
    "key: D\n",
    "note: slowly\n",
    "note:\n",
    "#\n",
    "Fn4 F# ",
    "RH C5\n",
    "tempo 72\n",
    "1 2 3\n",
    "Fis4 ",
    "D;2 ",
    "key: d-moll\n",
    "C3:5 G:1 | ",
    "RH: 1/4 C5 D | ",
    "title: none that is known\n",
    "hand: both\n",
    "hand: left\n",
    "bar: @\n",
    "bar: @\nC4:1 |\n",
    "meter: 3/4\ntempo: 70\nC4:1 |\n",
    "passage: @\nC4:1\n",
    "\n",
    "RH: ",
    "1/8. ",
    "1/@ ",
    "0 ",
    "C4:1~ ",
    "D ",
    "r ",
    "r4 ",
    ", ",
    "| ",
    "|: ",
    ":| ",
    "1/4 E4:3 | ",
    "1/4 E4:3~ r | ",
    "zz ",
    "\xFF ",
    "\x01",
    "\xC2\xA0",
    "^",
    "D5:2",
    ">3",
    "~",
    "+E:5",
    "+Eb:?",
    "#",
    "4",
    ":",
    "?",
    "h",
    "\xC3\xA9",
    " ",
    "\r",
    "LH: ",
    "C3:5 ",
    "^D3:4 ",
};

struct Many {
  std::size_t piece = 0;
  std::size_t times = 1;
};

std::string numbered(std::string piece, std::size_t number) {
  const std::size_t at = piece.find('@');
  return at == std::string::npos ? piece : piece.replace(at, 1, std::to_string(number));
}

std::string passage_with(Many one, Many other) {
  std::string text;
  for (std::size_t piece = 0; piece < kPieces.size(); ++piece) {
    const std::size_t times =
        (piece == one.piece ? one.times : 1) * (piece == other.piece ? other.times : 1);
    for (std::size_t i = 0; i < times; ++i) text += numbered(kPieces[piece], 100 + i);
  }
  return text;
}

std::uint64_t steps_of_passage(const std::string& text) {
  return work_of([&text] { read_notation(Source("many.passage", text)); }).steps;
}

}  // namespace

TEST_CASE("growth: notation: very many of each thing") {
  for (std::size_t piece = 0; piece < kPieces.size(); ++piece) {
    CAPTURE(kPieces[piece]);
    CHECK(grows_in_proportion([piece](std::size_t times) {
      return steps_of_passage(passage_with({piece, times}, {piece, 1}));
    }));
    // And of nothing else.
    CHECK(grows_in_proportion([piece](std::size_t times) {
      std::string text;
      for (std::size_t i = 0; i < times; ++i) text += numbered(kPieces[piece], 100 + i);
      return steps_of_passage(text);
    }));
  }
}

TEST_CASE("growth: notation: very many of two things") {
  const std::uint64_t once = steps_of_passage(passage_with({}, {}));
  std::vector<std::uint64_t> apart;
  for (std::size_t piece = 0; piece < kPieces.size(); ++piece) {
    apart.push_back(steps_of_passage(passage_with({piece, kTogether}, {piece, 1})));
  }
  for (std::size_t one = 0; one < kPieces.size(); ++one) {
    for (std::size_t other = 0; other < one; ++other) {
      CAPTURE(kPieces[one], kPieces[other]);
      const auto steps = [&](std::size_t times, std::size_t other_times) {
        return steps_of_passage(passage_with({one, times}, {other, other_times}));
      };
      CHECK(meet_in_proportion(steps, {once, apart[one], apart[other]}));
    }
  }
}
