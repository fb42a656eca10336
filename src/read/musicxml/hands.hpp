#pragma once

#include "read/musicxml/part_list.hpp"
#include "read/musicxml/written_note.hpp"

#include <optional>
#include <string>
#include <vector>

namespace fingerturn {

/// Which hand plays each voice of a part, and in words how that was decided.
struct VoiceHands {
  /// By the number of the voice; none where each note goes by its own staff.
  std::vector<std::optional<Hand>> of_voice;
  std::string remark;

  [[nodiscard]] Hand of(const WrittenNote& note) const;
};

/// A part with staves: the first is the right hand's, the others the left's, and a voice stays
/// with the hand of the staff where it has most of its notes, unless one name stands for a voice
/// on each staff. A part of one staff: the hand that
/// is given, else by its clef.
VoiceHands hands_of(const WrittenPart& part, const PartInfo& info, std::optional<Hand> given);

}  // namespace fingerturn
