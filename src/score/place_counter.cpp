#include "score/place_counter.hpp"

#include "text/utf8.hpp"

namespace fingerturn {

Place PlaceCounter::at(std::size_t offset) {
  if (!begun_ || offset >= source_.line_start(place_.line + 1)) {
    place_ = source_.place_of(offset);
  } else {
    place_.column += count_code_points(source_.text().substr(offset_, offset - offset_));
  }
  begun_ = true;
  offset_ = offset;
  return place_;
}

}  // namespace fingerturn
