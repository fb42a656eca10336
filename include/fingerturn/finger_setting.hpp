#pragma once

#include "fingerturn/score.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// Fingers to try at some moments of a score.
///
///     const FingerSettingResult setting = parse_finger_setting("RH 4:1.5=1");
///     const FingersSet tried = set_fingers(read.score, std::vector{*setting.value});
namespace fingerturn {

/// Other fingers for what a hand strikes at a moment.
struct FingerSetting {
  std::optional<Hand> hand;  ///< none: the one that strikes something then
  BeatInBar moment;
  /// For each note that is struck, the lowest first, its fingers, the striking one first; none
  /// where it is to have none.
  std::vector<std::vector<Finger>> fingers;
};

struct FingerSettingResult {
  std::optional<FingerSetting> value;
  std::string problem;  ///< "expected a bar and a beat ..., found ...", where there is no value
};

/// Reads "RH 4:1.5=1", "4:1.5=2>1", "LH 3:1=1+3+5" and "RH 4:2=?": a hand where it is needed, a bar
/// and a beat, and the fingers, those of a chord from the lowest note up. Any bytes may come in.
FingerSettingResult parse_finger_setting(std::string_view text);

/// A score with other fingers, or why they cannot be set.
struct FingersSet {
  Score score;
  std::string problem;  ///< for a person, one line; else empty
};

/// Sets fingers in the one passage of a score.
FingersSet set_fingers(Score score, std::span<const FingerSetting> settings);

}  // namespace fingerturn
