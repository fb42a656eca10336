#pragma once

#include "fingerturn/analysed.hpp"

#include <array>
#include <cstddef>
#include <optional>

namespace fingerturn {

/// Which parts of the notation and of the analysis a report uses, and its legend explains.
struct Used {
  void see(const EventAnalysis& found) noexcept;
  void see(const Event& event) noexcept;
  /// What of a line stands in the bars that are shown.
  void see(const AnalysedLine& line, const PassageAnalysis& shown);

  [[nodiscard]] bool has(Rotation rotation) const noexcept {
    return has(rotation, true) || has(rotation, false);
  }
  /// Whether there is an event of this kind whose side is known, or one whose side is not.
  [[nodiscard]] bool has(Rotation rotation, bool side_known) const noexcept {
    return kinds[static_cast<std::size_t>(rotation)][side_known ? 1 : 0];
  }
  [[nodiscard]] bool has(Crossing crossing) const noexcept {
    return crossings[static_cast<std::size_t>(crossing)];
  }
  [[nodiscard]] bool has_sides() const noexcept;
  /// Events that turn, though their side is not known.
  [[nodiscard]] bool has_open_sides() const noexcept;

  bool turning_changes = false;  ///< a silent change turns the forearm
  bool carries = false;          ///< the arm carries the hand
  bool moves = false;            ///< the hand moves in or out
  bool depths = false;           ///< the hand is in
  bool rests = false;
  bool breaths = false;
  bool graces = false;
  bool held = false;    ///< keys that are only held
  bool pinned = false;  ///< keys that are held while others are struck
  bool rolled = false;  ///< rolled chords
  bool trills = false;
  bool tremolos = false;
  bool changes = false;  ///< silent changes of finger
  bool suggestions = false;
  std::array<std::array<bool, 2>, 5> kinds{};  ///< by Rotation, with no side known and with one
  std::array<bool, 4> crossings{};             ///< by Crossing
};

/// All kinds and all that can pass, in the order of the legends.
inline constexpr std::array kRotations{Rotation::preparatory, Rotation::single_rotation,
                                       Rotation::double_rotation, Rotation::level,
                                       Rotation::undetermined};
inline constexpr std::array kCrossings{Crossing::thumb_under, Crossing::finger_over_thumb,
                                       Crossing::finger_crossing};

/// What the reports of a score use.
Used used_in(const AnalysedScore& analysed);

}  // namespace fingerturn
