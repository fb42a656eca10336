#pragma once

#include "fingerturn/diagnostic.hpp"
#include "score/diagnostic_codes.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

namespace fingerturn {

/// Collects what a reader has to say.
class Reporter {
 public:
  /// Which severity of a code holds: `&DiagnosticCode::in_notation` or `in_musicxml`.
  using SeverityOf = std::optional<Severity> DiagnosticCode::*;
  explicit Reporter(SeverityOf severity) : severity_(severity) {}

  void report(KnownCode code, Span span, std::string message, std::string hint = {}) {
    const Severity severity = (code.entry().*severity_).value_or(Severity::error);
    diagnostics_.add({severity, code.entry().id, span, std::move(message), std::move(hint)});
  }
  [[nodiscard]] std::size_t errors() const noexcept { return diagnostics_.errors; }
  [[nodiscard]] Diagnostics take() {
    diagnostics_.sort();
    return std::move(diagnostics_);
  }

 private:
  SeverityOf severity_;
  Diagnostics diagnostics_;
};

/// What was found, in quotation marks, cut short where it is long; "nothing" where it is empty.
std::string quoted(std::string_view found);

/// The span of `length` bytes at `begin`.
inline Span span_at(std::size_t begin, std::size_t length) {
  return {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(begin + length)};
}

}  // namespace fingerturn
