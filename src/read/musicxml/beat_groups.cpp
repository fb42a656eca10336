#include "read/musicxml/beat_groups.hpp"

#include <algorithm>
#include <utility>

namespace fingerturn {
namespace {

/// Where a voice is.
struct VoiceSoFar {
  std::size_t group = 0;
  bool has_group = false;
  std::uint32_t begun = 0;  ///< the measure in which the group begins
  std::uint32_t measure = 0;
  Ticks beat = 0;
  std::uint32_t slurs = 0;  ///< that are open
  Beam beam = Beam::none;   ///< of its last note
};

class Grouping {
 public:
  Grouping(const WrittenPart& part, const std::function<Hand(const WrittenNote&)>& hand_of_staff)
      : part_(part), hand_of_staff_(hand_of_staff), voices_(part.voice_count) {
    found_.of_note.reserve(part.notes.size());
  }

  BeatGroups group() {
    for (const WrittenNote& note : part_.notes) add(note);
    return std::move(found_);
  }

 private:
  void add(const WrittenNote& note) {
    VoiceSoFar& voice = voices_[note.voice];
    // A slur that begins at a grace note begins something new.
    if (note.grace && note.note.slurs_begin > 0 && voice.slurs == 0) voice.has_group = false;
    if (!note.grace && !note.in_chord) go_to(note, voice);
    found_.of_note.push_back(voice.group);
    count(note, voice.group);
    voice.slurs -= std::min<std::uint32_t>(voice.slurs, note.note.slurs_end);
    voice.slurs += note.note.slurs_begin;
  }

  void go_to(const WrittenNote& note, VoiceSoFar& voice) {
    go_to_beat(note);
    if (!goes_on(voice, note)) begin_group(voice, note);
    voice.measure = note.measure;
    voice.beat = beat_;
    voice.beam = note.beam;
    counted_ = {};
  }

  void begin_group(VoiceSoFar& voice, const WrittenNote& note) {
    if (is_long(voice, note)) voice.slurs = 0;
    voice.group = found_.groups.size();
    voice.has_group = true;
    voice.begun = note.measure;
    found_.groups.emplace_back();
  }

  /// A slur that is never closed must not decide for the whole piece.
  static bool is_long(const VoiceSoFar& voice, const WrittenNote& note) {
    constexpr std::uint32_t kMostMeasures = 8;
    return note.measure - voice.begun >= kMostMeasures;
  }

  [[nodiscard]] bool goes_on(const VoiceSoFar& voice, const WrittenNote& note) const {
    if (!voice.has_group || is_long(voice, note)) return false;
    if (voice.slurs > 0) return true;
    if (voice.beam == Beam::begins || voice.beam == Beam::inside) {
      return note.beam == Beam::inside || note.beam == Beam::ends;
    }
    const bool same_beat = voice.measure == note.measure && voice.beat == beat_;
    return same_beat && voice.beam == Beam::none && note.beam == Beam::none;
  }

  void count(const WrittenNote& note, std::size_t group) {
    const auto hand = static_cast<std::size_t>(hand_of_staff_(note));
    if (note.grace || counted_.at(hand)) return;
    counted_.at(hand) = true;
    ++found_.groups[group].at(hand);
  }

  /// The beat of a bar that a note begins in.
  void go_to_beat(const WrittenNote& note) {
    while (next_meter_ < part_.meters.size() && part_.meters[next_meter_].measure <= note.measure) {
      meter_ = part_.meters[next_meter_++].value;
    }
    const Ticks whole = 4 * part_.ticks_per_quarter;
    // Three whole notes are a whole number of beats in every meter.
    const Ticks tick = part_.measures[note.measure].bar_tick % (3 * whole) + note.tick;
    const bool is_compound = meter_.beats > 3 && meter_.beats % 3 == 0 && meter_.beat_type >= 8;
    beat_ = tick * meter_.beat_type / whole / (is_compound ? 3 : 1);
  }

  const WrittenPart& part_;
  const std::function<Hand(const WrittenNote&)>& hand_of_staff_;
  std::vector<VoiceSoFar> voices_;
  BeatGroups found_;
  Meter meter_;
  std::size_t next_meter_ = 0;
  Ticks beat_ = 0;
  std::array<bool, 2> counted_{};  ///< the hands for which the chord at hand has been counted
};

}  // namespace

std::optional<Hand> hand_with_most(const MomentsByHand& moments) {
  if (moments[0] == moments[1]) return std::nullopt;
  return moments[0] > moments[1] ? Hand::right : Hand::left;
}

BeatGroups beat_groups(const WrittenPart& part,
                       const std::function<Hand(const WrittenNote&)>& hand_of_staff) {
  return Grouping(part, hand_of_staff).group();
}

}  // namespace fingerturn
