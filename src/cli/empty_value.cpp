#include "cli/empty_value.hpp"

#include <cstddef>
#include <string>
#include <string_view>

namespace fingerturn::cli {
namespace {

/// The option of this name, "--output" or "-o", if it takes a value; else null.
const CLI::Option* option_with_value(const CLI::App& command, std::string_view name) {
  if (!name.starts_with('-')) return nullptr;
  const CLI::Option* option = command.get_option_no_throw(std::string(name));
  return option != nullptr && option->get_items_expected_max() > 0 ? option : nullptr;
}

}  // namespace

void refuse_empty_values(const CLI::App& command, std::span<const char* const> words) {
  constexpr std::string_view kEndOfOptions = "--";
  for (std::size_t i = 0; i < words.size() && words[i] != kEndOfOptions; ++i) {
    const std::string_view word = words[i];
    const std::size_t equals = word.find('=');
    const CLI::Option* option = option_with_value(command, word.substr(0, equals));
    if (option == nullptr) continue;
    const bool is_next_word = equals == std::string_view::npos;
    if (is_next_word && ++i == words.size()) return;  // CLI11 finds that the value is missing
    const std::string_view value = is_next_word ? words[i] : word.substr(equals + 1);
    if (!value.empty()) continue;
    throw CLI::ArgumentMismatch::TypedAtLeast(option->get_name(), 1, option->get_type_name());
  }
}

}  // namespace fingerturn::cli
