#pragma once

#include "fingerturn/source.hpp"
#include "read/reporter.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace fingerturn {

/// The text of an XML document in UTF-8, where its bytes are in UTF-16 or, by its declaration, in
/// an encoding of single bytes that is read; its declaration then says UTF-8. Nothing where the
/// bytes can be used as they are. Reports an encoding that is not read.
std::optional<std::string> transcoded_xml(std::string_view bytes, Reporter& reporter);

/// Whether bytes begin as an XML document in UTF-8 or UTF-16 does.
bool begins_as_xml(std::string_view bytes) noexcept;

/// A text of the document as a line for reports: blanks of all kinds become one, what is no text
/// becomes U+FFFD, and a long text is cut.
std::string line_of_text(std::string_view text);

}  // namespace fingerturn
