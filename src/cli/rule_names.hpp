#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace fingerturn::cli {

/// What may be meant where no rule and no message has this name: `did you mean "twist"?`.
std::string hint_for_name(std::string_view wanted);

/// The names of rules and messages that one on the command line stands for: its own, or those of
/// the rules of a section such as "5.5"; none where it is none.
std::vector<std::string> names_meant(const std::string& name);

}  // namespace fingerturn::cli
