#pragma once

#include "read/reporter.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace fingerturn {

/// The bytes of the score in an .mxl container, a zip file whose META-INF/container.xml names it
/// (MusicXML 4.0, compressed files). Reports why there is none. What unpacks to more than a reader
/// takes, or to very many times its size, is refused before it fills the memory.
std::optional<std::string> unpack_mxl(std::string_view bytes, Reporter& reporter);

}  // namespace fingerturn
