#include "score/diagnostic_codes.hpp"

#include <algorithm>

namespace fingerturn {

std::span<const DiagnosticCode> diagnostic_codes() noexcept { return kDiagnosticCodes; }

const DiagnosticCode* find_diagnostic_code(std::string_view id) noexcept {
  const auto* const found =
      std::find_if(kDiagnosticCodes.begin(), kDiagnosticCodes.end(),
                   [id](const DiagnosticCode& code) { return code.id == id; });
  return found == kDiagnosticCodes.end() ? nullptr : found;
}

}  // namespace fingerturn
