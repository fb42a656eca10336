#include "text/file_name.hpp"

namespace fingerturn {

std::string_view name_without_path(std::string_view name) noexcept {
  name.remove_prefix(name.find_last_of('/') + 1);
  for (const std::string_view ending : {".passage", ".musicxml", ".mxl", ".xml"}) {
    if (name.ends_with(ending) && name.size() > ending.size()) {
      name.remove_suffix(ending.size());
      break;
    }
  }
  return name;
}

}  // namespace fingerturn
