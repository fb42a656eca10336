#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace fingerturn::cli {

/// A word in single quotes, as bash and zsh read it.
std::string quoted_for_shell(std::string_view word);
/// Words in quotes, a blank between.
std::string quoted_for_shell(const std::vector<std::string>& words);

/// The text with a backslash before each of some letters.
std::string with_backslashes(std::string_view text, std::string_view letters);

/// The text with each of its places filled in that is called so, as in "@name@".
std::string filled_in(std::string text, std::string_view place, std::string_view words);

}  // namespace fingerturn::cli
