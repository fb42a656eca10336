#include "score_properties.hpp"
#include "target.hpp"

#include <cstddef>
#include <cstdint>
#include <string>

namespace {

using namespace fingerturn;
using namespace fingerturn::properties;

/// Either a way to another key, or one line that says what was expected.
void check(const std::string& text) {
  const TranspositionResult result = parse_transposition(text);
  if (!result.value) {
    expect(result.problem.size() < 500, "a long text is cut short");
    expect(result.problem.find('\n') == std::string::npos, "a problem is one line");
    expect_printable(result.problem);
    return;
  }
  const Score score =
      read_notation(Source("piece", "key: Ab major\nmeter: 4/4\nRH: 1/4 C5:1+Eb:3 Db:2 r Fb:3"))
          .score;
  const Transposed moved = transpose(score, *result.value);
  expect(moved.problem.empty() || moved.score == score, "what is refused changes nothing");
  expect_round_trip(moved.score);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  check(std::string(data, data + size));
  return 0;
}
