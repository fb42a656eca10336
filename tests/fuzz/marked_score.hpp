#pragma once

#include "expect.hpp"
#include "fingerturn/fingerturn.hpp"

#include <string>

/// What holds for every score that can be read and has its analysis written into it.
namespace fingerturn::properties {

inline std::string marked(const ReadResult& result, const Source& text,
                          const MusicXmlStyle& style) {
  return write_musicxml(text, AnalysedScore(text.name(), result.score), style);
}

inline std::string json_of(const Score& score) { return write_json(AnalysedScore("fuzz", score)); }

/// `text` is what the result was read from with these options.
inline void expect_marked(const ReadResult& result, const Source& text,
                          const ReadOptions& options) {
  const std::string unmarked = without_own_marks(text.text());
  const std::string out = marked(result, text, {});
  expect(without_own_marks(out) == unmarked, "only marks were added");
  expect(without_own_marks(marked(result, text, {.words = true})) == unmarked,
         "only words were added");
  const Source written("fuzz.musicxml", out);
  const ReadResult again = read_musicxml(written, options);
  expect(again.ok(), "a marked score can be read");
  expect(json_of(again.score) == json_of(result.score), "a marked score has the same analysis");
  expect(marked(again, text_read(again, written), {}) == out, "marking twice is marking once");
}

}  // namespace fingerturn::properties
