#include "catch.hpp"
#include "fingerturn/fingerturn.hpp"
#include "write/random_score.hpp"

#include <cstdint>
#include <string>
#include <vector>

/// The same input gives the same bytes, whichever writer.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

std::vector<std::string> all_reports(const Score& score) {
  const AnalysedScore report("test.passage", score);
  return {write_text(report, {}),
          write_text(report, {.columns = 50, .ascii = true, .detail = true, .colour = true}),
          write_text(report, {.trace = true}),
          write_html(report),
          write_svg(report),
          write_markdown(report, {.detail = true, .cues = true}),
          write_json(report),
          write_jsonl(report),
          write_passage(score)};
}

}  // namespace

TEST_CASE("the same score gives the same reports, byte for byte") {
  for (std::uint64_t seed = 1; seed <= 100; ++seed) {
    CAPTURE(seed);
    const Score score = random_score(seed);
    const Score same = random_score(seed);
    REQUIRE(score == same);
    CHECK(all_reports(score) == all_reports(same));
  }
}

TEST_CASE("all reports end with a line feed") {
  for (const std::string& text : all_reports(random_score(1))) CHECK(text.ends_with('\n'));
}

TEST_CASE("reports say nothing of where a note stood in its source") {
  const std::string text = "1/4 C4:1 D:2 E:3~ E ||";
  const Score plain = read_notation(Source("a", text)).score;
  const Score shifted = read_notation(Source("a", "\n\n  " + text + "   ")).score;
  REQUIRE(plain == shifted);
  CHECK(all_reports(plain) == all_reports(shifted));
}

TEST_CASE("a comment changes no report but the passage") {
  const std::string text = "RH: 1/4 C4:1 D:2 E:3~ E ||\n";
  const Score plain = read_notation(Source("a", text)).score;
  const Score told = read_notation(Source("a", "RH: 1/4 C4:1 D:2 E:3~ E || # slowly\n")).score;
  std::vector<std::string> reports = all_reports(plain);
  std::vector<std::string> with_comment = all_reports(told);
  CHECK(reports.back() != with_comment.back());
  reports.pop_back();
  with_comment.pop_back();
  CHECK(reports == with_comment);
}
