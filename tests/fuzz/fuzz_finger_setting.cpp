#include "score_properties.hpp"
#include "target.hpp"

#include <cstddef>
#include <cstdint>
#include <span>
#include <string>

namespace {

using namespace fingerturn;
using namespace fingerturn::properties;

/// Either a setting with fingers of a hand, or one line that says what was expected.
void check(const std::string& text) {
  const FingerSettingResult result = parse_finger_setting(text);
  if (!result.value) {
    expect(result.problem.size() < 500, "a long text is cut short");
    expect(result.problem.find('\n') == std::string::npos, "a problem is one line");
    expect_printable(result.problem);
    return;
  }
  expect(!result.value->fingers.empty(), "a setting has fingers");
  const Score score =
      read_notation(Source("piece", "meter: 4/4\nRH: 1/4 C5:1+E:3 D:2 r E:3\nLH: 1/2 C3:5 D:4"))
          .score;
  const FingersSet set = set_fingers(score, std::span(&*result.value, 1));
  expect(set.problem.empty() || set.score == score, "what cannot be set changes nothing");
  expect_round_trip(set.score);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  check(std::string(data, data + size));
  return 0;
}
