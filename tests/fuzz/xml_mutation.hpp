#pragma once

#include <optional>
#include <random>
#include <string>

namespace fingerturn::tests {

/// Changes a document in one place without making it less well-formed: an element is lost, doubled,
/// moved or exchanged with another, or the value of an attribute or a text becomes that of another.
/// Blanks between tags are not kept. Nothing where the text is no XML, or holds nothing to change.
std::optional<std::string> change_xml(const std::string& text, std::mt19937_64& engine);

}  // namespace fingerturn::tests
