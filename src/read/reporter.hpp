#pragma once

#include "fingerturn/diagnostic.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <utility>

namespace fingerturn {

/// Collects what a reader has to say.
class Reporter {
 public:
  void error(std::string_view code, Span span, std::string message, std::string hint = {}) {
    diagnostics_.add(
        {Severity::error, std::string(code), span, std::move(message), std::move(hint)});
  }
  void warning(std::string_view code, Span span, std::string message, std::string hint = {}) {
    diagnostics_.add(
        {Severity::warning, std::string(code), span, std::move(message), std::move(hint)});
  }
  [[nodiscard]] std::size_t errors() const noexcept { return diagnostics_.errors; }
  [[nodiscard]] Diagnostics take() {
    diagnostics_.sort();
    return std::move(diagnostics_);
  }

 private:
  Diagnostics diagnostics_;
};

/// What was found, in quotation marks, cut short where it is long; "nothing" where it is empty.
std::string quoted(std::string_view found);

/// The span of `length` bytes at `begin`.
inline Span span_at(std::size_t begin, std::size_t length) {
  return {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(begin + length)};
}

}  // namespace fingerturn
