#include "write/compare/names.hpp"

#include "text/file_name.hpp"

namespace fingerturn {

std::string_view shown_name(std::string_view name, const AnalysedPassage& passage) noexcept {
  const bool is_title = std::string_view(passage.written().title).ends_with(name);
  return is_title ? name : name_without_path(name);
}

std::string_view title_of(const Comparison& comparison) noexcept {
  return shown_name(comparison.title, comparison.fingerings.front().passage);
}

}  // namespace fingerturn
