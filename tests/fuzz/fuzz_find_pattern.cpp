#include "score_properties.hpp"
#include "target.hpp"

#include <cstddef>
#include <cstdint>
#include <string>

namespace {

using namespace fingerturn;
using namespace fingerturn::properties;

/// Either a pattern that can be looked for, or one line that says what was expected.
void check(const std::string& text) {
  const FindPatternResult result = parse_find_pattern(text);
  if (!result.ok()) {
    expect(!result.problem.empty() && result.problem.size() < 500, "a long text is cut short");
    expect(result.problem.find('\n') == std::string::npos, "a problem is one line");
    expect_printable(result.problem);
    return;
  }
  const Source source("piece",
                      "meter: 4/4\nRH: 1/4 C5:1+Eb:3 Db:2 r Fb:3 | C4:1 C:1 D:2 E:3\n"
                      "LH: 1/8 C3:5 D:4 E F:1 G:3 A#:2 B:1 C4:2");
  const AnalysedScore score("piece", read_notation(source).score);
  std::size_t events = 0;
  for (const FoundPlace& place : Finder(*result.pattern).in(score, &source)) {
    const AnalysedLine line = score[place.passage][place.line];
    expect(place.count > 0 && place.first + place.count <= line.size(), "a place is in its line");
    expect(!result.pattern->hand || line.hand() == *result.pattern->hand, "of the hand");
    expect(place.place.has_value(), "and in the text");
    events += place.count;
  }
  expect(events <= score[0][0].size() + score[0][1].size(), "no event is in two places");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  check(std::string(data, data + size));
  return 0;
}
