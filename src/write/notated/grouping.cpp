#include "write/notated/grouping.hpp"

#include <set>
#include <vector>

namespace fingerturn {
namespace {

constexpr int kEighth = 3;

bool takes_beam(const NotatedChord& chord) {
  return !chord.is_rest() && chord.value && chord.value->halvings >= kEighth;
}

/// Chords of a voice: those that take time or, apart from them, the grace notes, which stand
/// between these and part nothing.
using Row = std::vector<NotatedChord*>;

Row row_of(NotatedVoice& voice, bool grace) {
  Row row;
  for (NotatedChord& chord : voice) {
    if (chord.grace == grace) row.push_back(&chord);
  }
  return row;
}

/// The chords from `begin` up to `end`, if they are more than one.
void set_parts(const Row& row, std::size_t begin, std::size_t end, BeamPart NotatedChord::*part) {
  if (end - begin < 2) return;
  for (std::size_t i = begin; i < end; ++i) row[i]->*part = BeamPart::inside;
  row[begin]->*part = BeamPart::begins;
  row[end - 1]->*part = BeamPart::ends;
}

/// Calls a row of chords, each of which belongs to the one before it, one part.
template <typename Belong>
void set_rows(const Row& row, const Belong& belong, BeamPart NotatedChord::*part) {
  for (std::size_t begin = 0, end = 0; begin < row.size(); begin = end) {
    end = begin + 1;
    while (end < row.size() && belong(*row[end - 1], *row[end])) ++end;
    set_parts(row, begin, end, part);
  }
}

bool follows(const NotatedChord& before, const NotatedChord& after) {
  return before.onset + before.length == after.onset;
}

/// The wide groups that have something besides plain eighths.
std::set<Ticks> quick_groups(const Row& row, const BeamGroups& groups) {
  std::set<Ticks> quick;
  for (const NotatedChord* chord : row) {
    if (!takes_beam(*chord)) continue;
    const NoteValue& value = *chord->value;
    if (value.halvings == kEighth && value.dots == 0 && !value.in_tuplet()) continue;
    quick.insert((chord->onset - groups.first) / groups.wide);
  }
  return quick;
}

void set_beams(const Row& row, const BeamGroups& groups) {
  const std::set<Ticks> quick = quick_groups(row, groups);
  const auto is_one_group = [&](Ticks one, Ticks other) {
    const Ticks wide = (one - groups.first) / groups.wide;
    if (wide != (other - groups.first) / groups.wide) return false;
    return !quick.contains(wide) ||
           (one - groups.first) / groups.group == (other - groups.first) / groups.group;
  };
  const auto belong = [&](const NotatedChord& before, const NotatedChord& after) {
    return takes_beam(before) && takes_beam(after) && follows(before, after) &&
           is_one_group(before.onset, after.onset);
  };
  set_rows(row, belong, &NotatedChord::beam);
}

/// Grace notes of one main note, which no chord of another onset parts, have one beam.
void set_grace_beams(const Row& row) {
  const auto belong = [](const NotatedChord& before, const NotatedChord& after) {
    return takes_beam(before) && takes_beam(after) && before.onset == after.onset;
  };
  set_rows(row, belong, &NotatedChord::beam);
}

/// A tuplet ends where, from its beginning, plain values fill the time again.
void set_tuplets(const Row& row, const BeamGroups& groups) {
  const auto is_tuplet = [](const NotatedChord& chord) {
    return chord.value && chord.value->in_tuplet();
  };
  for (std::size_t begin = 0, end = 0; begin < row.size(); begin = end) {
    end = begin + 1;
    if (!is_tuplet(*row[begin])) continue;
    Ticks length = row[begin]->length;
    while (length % groups.unit != 0 && end < row.size() && is_tuplet(*row[end]) &&
           row[end]->value->actual == row[begin]->value->actual &&
           follows(*row[end - 1], *row[end])) {
      length += row[end++]->length;
    }
    set_parts(row, begin, end, &NotatedChord::tuplet);
  }
}

}  // namespace

BeamGroups beam_groups(const Meter* meter, Ticks bar_length, bool is_upbeat, Ticks ticks_in_whole) {
  const Ticks quarter = ticks_in_whole / 4;
  const Ticks unit = ticks_in_whole >> (kMostHalvings + 2);
  if (meter == nullptr) return {0, quarter, quarter, unit};
  const Ticks beat = ticks_in_whole / meter->beat_type;
  const Ticks whole = meter->beats * beat;
  Ticks group = quarter;
  if (meter->beat_type >= 8) {
    group = (meter->beats % 3 == 0 ? 3 : 2) * beat;
  } else if (meter->beat_type <= 2) {
    group = beat;
  }
  const bool halves = meter->beat_type == 4 && meter->beats % 2 == 0;
  return {is_upbeat && bar_length < whole ? bar_length - whole : 0, group,
          halves ? 2 * group : group, unit};
}

void group_voice(NotatedVoice& voice, const BeamGroups& groups) {
  const Row row = row_of(voice, false);
  set_beams(row, groups);
  set_tuplets(row, groups);
  set_grace_beams(row_of(voice, true));
}

}  // namespace fingerturn
