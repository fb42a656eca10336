#include "write/musicxml/edit.hpp"

#include <cstddef>

namespace fingerturn {

std::string edited(std::string_view original, const std::vector<Span>& own_marks,
                   const std::vector<Insertion>& insertions) {
  std::string out;
  std::size_t done = 0;
  auto insertion = insertions.begin();
  const auto copy_up_to = [&](std::size_t place) {
    for (; insertion != insertions.end() && insertion->at <= place; ++insertion) {
      out += original.substr(done, insertion->at - done);
      out += insertion->text;
      done = insertion->at;
    }
    out += original.substr(done, place - done);
  };
  for (const Span mark : own_marks) {
    copy_up_to(mark.begin);
    done = mark.end;
  }
  copy_up_to(original.size());
  return out;
}

}  // namespace fingerturn
