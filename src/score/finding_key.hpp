#pragma once

#include <optional>
#include <string>
#include <string_view>

#include <fmt/format.h>

namespace fingerturn {

/// What tells a finding of a check from others: not its line and column, which move when something
/// is put in before it. The passage counts from 1; numbers are told to three decimals, as beats are
/// written.
inline std::string finding_key(std::string_view code, std::optional<double> passage,
                               std::string_view hand, std::optional<double> bar,
                               std::optional<double> beat, std::string_view message) {
  const auto text = [](const std::optional<double>& number) {
    return number ? fmt::format("{:.3f}", *number) : std::string();
  };
  return fmt::format("{}|{}|{}|{}|{}|{}", code, text(passage), hand, text(bar), text(beat),
                     message);
}

}  // namespace fingerturn
