#include "report/json_text.hpp"

#include <nlohmann/json.hpp>

namespace fingerturn {
namespace {

/// The replacing handler leaves the library nothing to throw about.
std::string dumped(const nlohmann::json& value) {
  constexpr int kNoIndent = -1;
  return value.dump(kNoIndent, ' ', false, nlohmann::json::error_handler_t::replace);
}

}  // namespace

std::string json_text(std::string_view text) { return dumped(text); }

std::string json_number(double number) { return dumped(number); }

}  // namespace fingerturn
