#pragma once

#include "fingerturn/score.hpp"

#include <array>
#include <optional>
#include <string_view>

#include <pugixml.hpp>

/// What stands beside the notes of a score and no rule looks at (MusicXML 4.0, dynamics, wedge,
/// fermata, ending).
namespace fingerturn {

/// Gathers the signs of a part as they are met.
class ScoreSignReader {
 public:
  explicit ScoreSignReader(ScoreSigns& signs) : signs_(signs) {}

  /// The dynamics and hairpins of a `<direction>`.
  void read_direction(pugi::xml_node direction, const BarMoment& at, Hand hand);
  /// The dynamics within a `<notations>`.
  void read_dynamics(pugi::xml_node dynamics, const BarMoment& at, Hand hand);
  /// The beginning or end of an ending in a `<barline>` of a bar.
  void read_bar_line(pugi::xml_node bar_line, std::int32_t bar);

 private:
  [[nodiscard]] bool is_crowded(const BarMoment& at) const;
  void read_wedge(pugi::xml_node wedge, const BarMoment& at, Hand hand);
  void begin_ending(pugi::xml_node ending, std::int32_t bar);

  static constexpr std::size_t kMostOpen = 16;  // MusicXML 4.0, number-level

  ScoreSigns& signs_;
  std::array<std::optional<Hairpin>, kMostOpen> open_;  ///< hairpins, by their numbers
  std::optional<RepeatEnding> ending_;                  ///< that has begun
};

/// Puts the signs in the order of their moments.
void sort_signs(ScoreSigns& signs);
/// Adds those of another part, whose hand they are.
void add_signs(ScoreSigns more, Hand hand, ScoreSigns& signs);

}  // namespace fingerturn
