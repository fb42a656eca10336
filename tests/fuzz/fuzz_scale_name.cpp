#include "score_properties.hpp"
#include "target.hpp"

#include <cstddef>
#include <cstdint>
#include <string>

namespace {

using namespace fingerturn;
using namespace fingerturn::properties;

/// Either a scale that reads back, or one line that says why there is none.
void check(const std::string& name, const ScaleOptions& options) {
  const ScaleResult result = handbook_scale(name, options);
  if (result.ok()) {
    expect(result.score.passages.size() == 1, "a scale is one passage");
    expect_round_trip(result.score);
    return;
  }
  expect(result.score.passages.empty(), "where there is a problem there is no scale");
  expect(result.problem.size() < 500, "a long name is cut short");
  expect(result.problem.find('\n') == std::string::npos, "a problem is one line");
  expect_printable(result.problem);
}

}  // namespace

/// The first byte chooses what is asked for, the others are the name.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  const unsigned choice = data[0];
  const std::string name(data + 1, data + size);
  check(name, {});
  check(name, {.hand = choice % 2 == 0 ? Hand::right : Hand::left,
               .octaves = static_cast<int>(choice % 7),
               .direction = static_cast<ScaleDirection>(choice % 3),
               .from = parse_pitch(name.substr(0, 1) + std::to_string(choice % 10))});
  check(name, {.octaves = static_cast<int>(choice % 5),
               .direction = static_cast<ScaleDirection>(choice % 3),
               .from = parse_pitch(name.substr(0, 1) + std::to_string(choice % 9)),
               .inversion = static_cast<int>(choice / 4 % 6) - 1,
               .contrary = choice % 7 == 0,
               .apart = static_cast<HandsApart>(choice / 8 % 4),
               .notes = static_cast<ScaleNotes>(choice / 32 % 3)});
  return 0;
}
