#include "fingerturn/read.hpp"
#include "read/musicxml/text.hpp"
#include "text/words.hpp"

#include <string_view>

namespace fingerturn {
namespace {

/// A zip file begins with an entry or, when it is empty, with the end of its directory.
bool begins_as_zip(std::string_view bytes) {
  return bytes.starts_with("PK\x03\x04") || bytes.starts_with("PK\x05\x06");
}

}  // namespace

const Source& text_read(const ReadResult& result, const Source& source) noexcept {
  return result.unpacked ? *result.unpacked : source;
}

SourceForm form_of(const Source& source) noexcept {
  if (begins_as_zip(source.text())) return SourceForm::packed_musicxml;
  if (begins_as_xml(source.text())) return SourceForm::musicxml;
  const std::string_view name = source.name();
  if (ends_in_lower_case(name, ".mxl")) return SourceForm::packed_musicxml;
  const bool musicxml = ends_in_lower_case(name, ".musicxml") || ends_in_lower_case(name, ".xml");
  return musicxml ? SourceForm::musicxml : SourceForm::notation;
}

ReadResult read(const Source& source, const ReadOptions& options) {
  if (form_of(source) == SourceForm::notation) return read_notation(source);
  return read_musicxml(source, options);
}

}  // namespace fingerturn
