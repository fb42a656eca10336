#include "score_properties.hpp"
#include "target.hpp"

#include <cstddef>
#include <cstdint>
#include <string>

namespace {

using namespace fingerturn;
using namespace fingerturn::properties;

/// Either lines of an earlier check, which take away no more than was found, or one line that says
/// what was expected.
void check_lines(const Source& source) {
  const CheckBaselineResult result = read_check_baseline(source);
  if (!result.ok()) {
    expect(result.baseline.known.empty(), "where there is a problem nothing is known");
    expect(result.problem.find('\n') == std::string::npos, "a problem is one line");
    return;
  }
  const Source piece("one.passage", "meter: 2/4\n1/4 C4:2+A4:4 D4:1 | E4:2+C5:4 D4:1 |");
  FileCheck found = check(piece, read(piece));
  const std::size_t before = found.findings.size();
  leave_out_known(found, result.baseline);
  expect(found.findings.size() <= before, "nothing comes to what was found");
  expect(found.file.counts.watch.total() == found.findings.size(), "what is left is counted");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  check_lines(Source("lines.jsonl", std::string(data, data + size)));
  return 0;
}
