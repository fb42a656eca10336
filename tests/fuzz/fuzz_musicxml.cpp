#include "marked_score.hpp"
#include "score_properties.hpp"
#include "target.hpp"

#include <cstddef>
#include <cstdint>
#include <string>

namespace {

using namespace fingerturn;
using namespace fingerturn::properties;

/// Titles and the like are other people's words; what the notation makes of them is tested apart.
Score without_words(Score score) {
  for (Passage& passage : score.passages) {
    passage.title.clear();
    passage.composer.clear();
    passage.source.clear();
  }
  return score;
}

void expect_sound_score(const Source& source, const ReadOptions& options) {
  const ReadResult result = read_musicxml(source, options);
  const Source& text = text_read(result, source);
  expect_sound(result, text);
  expect_sound(result.score, text);
  if (!result.ok()) return;
  const std::string json = expect_reports(result.score);
  expect(expect_reports(read_musicxml(source, options).score) == json,
         "the same input gives the same bytes");
  expect_round_trip(without_words(result.score));
  expect_reports(only_bars(result.score, {2, 3}));
  expect_marked(result, text, options);
  if (result.score.passages.size() != 1) return;
  const FingersBack back = fingers_back(result.score, result.score);
  expect(back.problem.empty() && back.changed.empty(), "a score has its own fingers");
  expect(write_fingers(text, result.score, back.score) == text.text(),
         "fingers that are there already change no byte");
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const Source source("fuzz.musicxml", std::string(data, data + size));
  expect_sound_score(source, {});
  expect_sound_score(source, {.hand = Hand::left, .part = 2});
  return 0;
}
