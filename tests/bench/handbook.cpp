#include "handbook.hpp"

#include "fingerturn/fingering.hpp"
#include "fingerturn/scale.hpp"

#include <cstddef>
#include <string>

#include <fmt/core.h>

namespace fingerturn::bench {
namespace {

struct Whole {
  std::size_t scales = 0;
  std::size_t whole = 0;
};

bool has_fingers_of(const Line& handbook, const Line& found) {
  for (std::size_t e = 0; e < handbook.events.size(); ++e) {
    for (std::size_t n = 0; n < handbook.events[e].notes.size(); ++n) {
      if (handbook.events[e].notes[n].finger != found.events[e].notes[n].finger) return false;
    }
  }
  return true;
}

void add(const std::string& name, const ScaleOptions& options, Whole& sum) {
  const Score handbook = handbook_scale(name, options).score;
  const Score found = with_suggestions(without_fingers(handbook));
  ++sum.scales;
  const Line& line = handbook.passages.front().lines.front();
  if (has_fingers_of(line, found.passages.front().lines.front())) ++sum.whole;
}

}  // namespace

void print_handbook() {
  Whole sum;
  for (const std::string& name : handbook_scale_names()) {
    for (const Hand hand : {Hand::right, Hand::left}) {
      for (int octaves = 1; octaves <= kMostScaleOctaves; ++octaves) {
        for (const ScaleDirection direction :
             {ScaleDirection::up, ScaleDirection::down, ScaleDirection::up_and_down}) {
          ScaleOptions options;
          options.hand = hand;
          options.octaves = octaves;
          options.direction = direction;
          add(name, options, sum);
        }
      }
    }
  }
  fmt::print("\nscales and arpeggios of the handbooks that come out whole: {} of {}\n", sum.whole,
             sum.scales);
}

}  // namespace fingerturn::bench
