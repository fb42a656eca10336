#include "score_properties.hpp"
#include "target.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace {

using namespace fingerturn;
using namespace fingerturn::properties;

/// A line that is read is written as it was, once it has been written.
void check_round_trip(std::string_view text) {
  const CheckLineResult line = read_check_line(text);
  expect(line.ok() || !line.check, "a problem and a check exclude one another");
  if (!line.check) return;
  const std::string written = write_check_jsonl(*line.check);
  const CheckLineResult again = read_check_line(written);
  expect(again.ok() && again.check.has_value(), "what is written is read");
  expect(write_check_jsonl(*again.check) == written, "and written the same");
  expect(!write_findings(*again.check, std::nullopt).empty() || again.check->findings.empty(),
         "findings are lines");
}

/// Either lines of an earlier check, which take away no more than was found, or one line that says
/// what was expected.
void check_lines(const Source& source) {
  for (std::size_t line = 1; line <= source.line_count(); ++line) {
    check_round_trip(source.line_text(line));
  }
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
