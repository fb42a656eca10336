#include "write/notated/grouping.hpp"

#include <set>
#include <vector>

namespace fingerturn {
namespace {

constexpr int kEighth = 3;

bool takes_beam(const NotatedChord& chord) {
  return !chord.is_rest() && chord.value && chord.value->halvings >= kEighth;
}

using Row = std::vector<NotatedChord*>;

/// The neighbours of a row from `begin` up to `end`, if they are more than one.
void set_parts(const Row& row, std::size_t begin, std::size_t end, BeamPart NotatedChord::*part) {
  if (end - begin < 2) return;
  for (std::size_t i = begin; i < end; ++i) row[i]->*part = BeamPart::inside;
  row[begin]->*part = BeamPart::begins;
  row[end - 1]->*part = BeamPart::ends;
}

/// Beams over what belongs together in a row.
template <typename Belong>
void beam_runs(const Row& row, const Belong& belong) {
  for (std::size_t begin = 0, end = 0; begin < row.size(); begin = end) {
    end = begin + 1;
    while (end < row.size() && belong(*row[end - 1], *row[end])) ++end;
    set_parts(row, begin, end, &NotatedChord::beam);
  }
}

/// The wide groups that have something besides plain eighths.
std::set<Ticks> quick_groups(const NotatedVoice& voice, const BeamGroups& groups) {
  std::set<Ticks> quick;
  for (const NotatedChord& chord : voice) {
    if (chord.grace || !takes_beam(chord)) continue;
    if (chord.value->halvings == kEighth && chord.value->dots == 0 && !chord.value->in_tuplet()) {
      continue;
    }
    quick.insert((chord.onset - groups.first) / groups.wide);
  }
  return quick;
}

void set_beams(NotatedVoice& voice, const Row& mains, const BeamGroups& groups) {
  const std::set<Ticks> quick = quick_groups(voice, groups);
  const auto is_one_group = [&](Ticks one, Ticks other) {
    const Ticks wide = (one - groups.first) / groups.wide;
    if (wide != (other - groups.first) / groups.wide) return false;
    return !quick.contains(wide) ||
           (one - groups.first) / groups.group == (other - groups.first) / groups.group;
  };
  beam_runs(mains, [&](const NotatedChord& before, const NotatedChord& after) {
    return takes_beam(before) && takes_beam(after) && before.onset + before.length == after.onset &&
           is_one_group(before.onset, after.onset);
  });
}

/// Grace notes that follow one another share a beam.
void set_grace_beams(NotatedVoice& voice) {
  Row row;
  for (NotatedChord& chord : voice) row.push_back(&chord);
  beam_runs(row, [](const NotatedChord& before, const NotatedChord& after) {
    return before.grace && after.grace && takes_beam(before) && takes_beam(after);
  });
}

/// A tuplet ends where, from its beginning, plain values fill the time again.
void set_tuplets(const Row& mains, const BeamGroups& groups) {
  const auto is_tuplet = [](const NotatedChord& chord) {
    return chord.value && chord.value->in_tuplet();
  };
  for (std::size_t begin = 0, end = 0; begin < mains.size(); begin = end) {
    end = begin + 1;
    if (!is_tuplet(*mains[begin])) continue;
    Ticks length = mains[begin]->length;
    while (length % groups.unit != 0 && end < mains.size() && is_tuplet(*mains[end]) &&
           mains[end]->value->actual == mains[begin]->value->actual &&
           mains[end - 1]->onset + mains[end - 1]->length == mains[end]->onset) {
      length += mains[end++]->length;
    }
    set_parts(mains, begin, end, &NotatedChord::tuplet);
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
  Row mains;
  for (NotatedChord& chord : voice) {
    if (!chord.grace) mains.push_back(&chord);
  }
  set_beams(voice, mains, groups);
  set_grace_beams(voice);
  set_tuplets(mains, groups);
}

}  // namespace fingerturn
