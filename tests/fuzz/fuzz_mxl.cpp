#include "score_properties.hpp"
#include "target.hpp"

#include <cstddef>
#include <cstdint>
#include <string>

/// Containers: what is packed in them, and containers that are none.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace fingerturn;
  using namespace fingerturn::properties;
  const Source source("fuzz.mxl", std::string(data, data + size));
  const ReadResult result = read(source);
  const Source& text = text_read(result, source);
  expect(text.text().size() <= kLargestMusicXml, "what is unpacked keeps to the limit");
  expect_sound(result, text);
  expect_sound(result.score, text);
  if (result.ok()) expect_reports(result.score);
  return 0;
}
