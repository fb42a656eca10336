#include "write/notated/grouping.hpp"

#include <set>
#include <span>

namespace fingerturn {
namespace {

constexpr int kEighth = 3;

bool takes_beam(const NotatedChord& chord) {
  return !chord.is_rest() && chord.value && chord.value->halvings >= kEighth;
}

/// A row of chords from `begin` up to `end`, if it is more than one.
void set_parts(NotatedVoice& voice, std::size_t begin, std::size_t end,
               BeamPart NotatedChord::*part) {
  if (end - begin < 2) return;
  for (std::size_t i = begin; i < end; ++i) voice[i].*part = BeamPart::inside;
  voice[begin].*part = BeamPart::begins;
  voice[end - 1].*part = BeamPart::ends;
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

void set_beams(NotatedVoice& voice, const BeamGroups& groups) {
  const std::set<Ticks> quick = quick_groups(voice, groups);
  const auto is_one_group = [&](Ticks one, Ticks other) {
    const Ticks wide = (one - groups.first) / groups.wide;
    if (wide != (other - groups.first) / groups.wide) return false;
    return !quick.contains(wide) ||
           (one - groups.first) / groups.group == (other - groups.first) / groups.group;
  };
  const auto belong = [&](const NotatedChord& before, const NotatedChord& after) {
    if (before.grace != after.grace || !takes_beam(before) || !takes_beam(after)) return false;
    return before.grace ||
           (before.onset + before.length == after.onset && is_one_group(before.onset, after.onset));
  };
  for (std::size_t begin = 0, end = 0; begin < voice.size(); begin = end) {
    end = begin + 1;
    while (end < voice.size() && belong(voice[end - 1], voice[end])) ++end;
    set_parts(voice, begin, end, &NotatedChord::beam);
  }
}

/// A tuplet ends where, from its beginning, plain values fill the time again.
void set_tuplets(NotatedVoice& voice, const BeamGroups& groups) {
  const auto is_tuplet = [](const NotatedChord& chord) {
    return !chord.grace && chord.value && chord.value->in_tuplet();
  };
  for (std::size_t begin = 0, end = 0; begin < voice.size(); begin = end) {
    end = begin + 1;
    if (!is_tuplet(voice[begin])) continue;
    Ticks length = voice[begin].length;
    while (length % groups.unit != 0 && end < voice.size() && is_tuplet(voice[end]) &&
           voice[end].value->actual == voice[begin].value->actual &&
           voice[end - 1].onset + voice[end - 1].length == voice[end].onset) {
      length += voice[end++].length;
    }
    set_parts(voice, begin, end, &NotatedChord::tuplet);
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
  set_beams(voice, groups);
  set_tuplets(voice, groups);
}

}  // namespace fingerturn
