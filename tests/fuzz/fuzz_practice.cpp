#include "practice_properties.hpp"
#include "score_properties.hpp"
#include "target.hpp"

#include <cstddef>
#include <cstdint>
#include <string>

namespace {

using namespace fingerturn;
using namespace fingerturn::properties;

constexpr const char* kPiece =
    "tempo: 120\nRH: 1/8 C4:1 E:3 C:1 E:3 | C4:1 D:2 E:3 F:1 G:2 A:3 B:4 C5:5 | C4:1 E:3 C:1 E:3 |";

/// An earlier plan is one that a plan can go on from, or it is said in one line why not.
void check(const Source& source) {
  const PracticeMemoryResult result = read_practice(source);
  if (result.ok()) return expect_plan(read_notation(Source("piece", kPiece)).score, &result.memory);
  expect(result.memory.places.empty(), "where there is a problem there is no plan");
  expect(result.problem.find('\n') == std::string::npos, "a problem is one line");
  expect(result.problem.size() < 500, "what was found is cut short");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  check(Source("plan.json", std::string(data, data + size)));
  return 0;
}
