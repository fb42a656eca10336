#include "fingerturn/analysis.hpp"

namespace fingerturn {

void WatchCounts::add(WatchLevel level) noexcept {
  switch (level) {
    case WatchLevel::info:
      ++info;
      break;
    case WatchLevel::caution:
      ++caution;
      break;
    case WatchLevel::strain:
      ++strain;
      break;
  }
}

void WatchCounts::add(const WatchCounts& other) noexcept {
  info += other.info;
  caution += other.caution;
  strain += other.strain;
}

std::size_t WatchCounts::total() const noexcept { return info + caution + strain; }

bool WatchCounts::reaches(WatchLevel level) const noexcept {
  switch (level) {
    case WatchLevel::info:
      return total() > 0;
    case WatchLevel::caution:
      return caution + strain > 0;
    case WatchLevel::strain:
      break;
  }
  return strain > 0;
}

}  // namespace fingerturn
