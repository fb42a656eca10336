#include "practice_properties.hpp"
#include "score_properties.hpp"
#include "target.hpp"

#include <cstddef>
#include <cstdint>
#include <string>

namespace {

using namespace fingerturn;
using namespace fingerturn::properties;

void expect_excerpt(const Score& score) {
  const Excerpt part = excerpt(score, {2, 3});
  const ReadResult again = read_notation(Source("excerpt", write_excerpt(score, part)));
  expect(again.ok(), "an excerpt can be read");
  expect(again.score == part.score, "an excerpt is read as it was written");
}

/// A new MusicXML score can be read, and has the marks of any other.
void expect_new_score(const Score& score) {
  for (const Passage& passage : score.passages) {
    const Score alone{{passage}};
    const std::string written = write_musicxml(AnalysedScore("fuzz", alone), {});
    expect(written.empty() == !musicxml_problem(alone).empty(), "what has no problem is written");
    if (written.empty()) continue;
    expect(is_xml(written), "a new score is well-formed");
    expect(read_musicxml(Source("fuzz.musicxml", written)).ok(), "a new score can be read");
  }
}

void check(const Source& source) {
  const ReadResult read = read_notation(source);
  expect_sound(read, source);
  expect_sound(read.score, source);
  if (!read.ok()) return;
  expect_round_trip(read.score);
  const std::string json = expect_reports(read.score);
  expect(expect_reports(read_notation(source).score) == json,
         "the same input gives the same bytes");
  for (const Hand hand : {Hand::right, Hand::left}) expect_reports(only_hand(read.score, hand));
  const Score bars = only_bars(read.score, {2, 3});
  expect_round_trip(bars);
  expect_reports(bars);
  expect_excerpt(read.score);
  expect_new_score(read.score);
  expect_plan(read.score);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  check(Source("fuzz.passage", std::string(data, data + size)));
  return 0;
}
