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
    diagnostics_.add(
        {severity_of(code), code.entry().id, span, std::move(message), std::move(hint), {}});
  }
  /// The same of something in the passage that is being read, with its place there.
  void report(KnownCode code, Span span, MusicalPlace where, std::string message) {
    where.passage = passage_;
    diagnostics_.add({severity_of(code), code.entry().id, span, std::move(message), {}, where});
  }
  /// Which passage of the score is read from here on.
  void start_passage(std::size_t passage) { passage_ = passage; }
  [[nodiscard]] std::size_t errors() const noexcept { return diagnostics_.errors; }
  [[nodiscard]] Diagnostics take() {
    diagnostics_.sort();
    return std::move(diagnostics_);
  }

 private:
  [[nodiscard]] Severity severity_of(KnownCode code) const {
    return (code.entry().*severity_).value_or(Severity::error);
  }

  SeverityOf severity_;
  std::size_t passage_ = 0;
  Diagnostics diagnostics_;
};

/// What was found, in quotation marks, cut short where it is long; "nothing" where it is empty.
std::string quoted(std::string_view found);

/// The span of `length` bytes at `begin`.
inline Span span_at(std::size_t begin, std::size_t length) {
  return {static_cast<std::uint32_t>(begin), static_cast<std::uint32_t>(begin + length)};
}

}  // namespace fingerturn
