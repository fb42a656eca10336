#include "read/musicxml/part.hpp"

#include "read/musicxml/element.hpp"
#include "read/musicxml/fingering.hpp"
#include "read/musicxml/hand_signs.hpp"
#include "read/musicxml/note.hpp"
#include "read/musicxml/place.hpp"
#include "read/musicxml/score_signs.hpp"
#include "read/musicxml/signs.hpp"
#include "read/musicxml/text.hpp"
#include "read/musicxml/tick_counter.hpp"

#include <algorithm>
#include <map>
#include <string>
#include <utility>

#include <fmt/core.h>

namespace fingerturn {
namespace {

constexpr std::string_view kDivisions = "divisions above 0 that can be counted exactly";
constexpr std::string_view kDuration = "a duration from 0 to 10000 quarter notes";

/// The numbers of a part's voices, which may be called anything. A note without a voice is in one
/// of its staff's own.
class Voices {
 public:
  std::uint32_t number_of(std::string_view name, std::uint32_t staff) {
    const Called called(name, name.empty() ? staff : 0);
    if (called == last_) return last_number_;
    const auto next = static_cast<std::uint32_t>(numbers_.size());
    last_number_ = numbers_.try_emplace(called, next).first->second;
    last_ = called;
    return last_number_;
  }

 private:
  using Called = std::pair<std::string_view, std::uint32_t>;

  std::map<Called, std::uint32_t> numbers_;
  std::optional<Called> last_;
  std::uint32_t last_number_ = 0;
};

/// What a note that is marked as one of a chord is struck with: the note before it, whatever that
/// is.
struct OpenChord {
  std::optional<std::size_t> first;  ///< its first note that is played, in WrittenPart::notes
  std::string_view between;          ///< what stands in the place of that note or behind it
  bool takes_time = true;            ///< that note does, and so the chord
};

class PartReader {
 public:
  explicit PartReader(Reporter& reporter)
      : reporter_(reporter), ticks_(part_), signs_(part_.signs) {}

  WrittenPart read(const std::vector<MeasureElement>& measures) {
    part_.measures.reserve(measures.size());
    for (const MeasureElement& measure : measures) read_measure(measure);
    sort_signs(part_.signs);
    return std::move(part_);
  }

 private:
  void read_measure(const MeasureElement& element) {
    WrittenMeasure& measure = part_.measures.emplace_back();
    measure.span = span_of(element.music);
    measure.beat_type = beat_type_;
    numbers_.number(measure, element.number, part_.measures.size() == 1);
    if (measure.continues_bar) {
      const WrittenMeasure& before = part_.measures[part_.measures.size() - 2];
      measure.bar_tick = before.bar_tick + before.length;
    }
    ticks_.start_measure();
    chord_.reset();
    for (const pugi::xml_node child : element.music) read_child(child, measure);
    measure.length = ticks_.furthest();
  }

  [[nodiscard]] std::uint32_t this_measure() const {
    return static_cast<std::uint32_t>(part_.measures.size() - 1);
  }

  void read_child(pugi::xml_node child, WrittenMeasure& measure) {
    const std::string_view name = child.name();
    if (name == "note") {
      read_note(note_element(child));
    } else if (name == "backup" || name == "forward") {
      read_move(child, name == "backup");
    } else if (name == "attributes") {
      read_attributes(child, measure);
    } else if (name == "direction" || name == "sound") {
      read_tempo(child);
      if (name == "direction") read_direction(child);
    } else if (name == "barline") {
      const bool left = std::string_view(child.attribute("location").value()) == "left";
      (left ? measure.left : measure.right) = bar_line_style(child);
      signs_.read_bar_line(child, measure.bar);
    }
  }

  void read_attributes(pugi::xml_node attributes, WrittenMeasure& measure) {
    // Several signatures are those of several staves; the first holds.
    bool has_meter = false;
    bool has_key = false;
    for (const pugi::xml_node child : attributes) {
      const std::string_view name = child.name();
      if (name == "divisions" && !ticks_.set_divisions(text_of(child))) {
        report_time(child, kDivisions, text_of(child));
      } else if (name == "time" && !has_meter) {
        has_meter = true;
        read_meter(child, measure);
      } else if (name == "key" && !has_key) {
        has_key = true;
        read_key(child);
      } else if (name == "staves") {
        constexpr std::uint32_t kMostStaves = 99;
        const auto staves = whole_number<std::uint32_t>(text_of(child));
        if (staves && *staves <= kMostStaves) {
          part_.staff_count = std::max(part_.staff_count, *staves);
        }
      }
    }
  }

  void read_meter(pugi::xml_node time, WrittenMeasure& measure) {
    const std::optional<Meter> meter = meter_in(time);
    if (!meter) return;
    if (changes_here(part_.meters)) part_.meters.pop_back();
    part_.meters.push_back({this_measure(), *meter});
    measure.beat_type = beat_type_ = meter->beat_type;
  }

  void read_key(pugi::xml_node element) {
    const std::optional<KeySignature> key = key_in(element);
    if (!key) return;
    if (changes_here(part_.keys)) part_.keys.pop_back();
    part_.keys.push_back({this_measure(), *key});
  }

  void read_tempo(pugi::xml_node element) {
    if (changes_here(part_.tempos)) return;
    if (const auto tempo = tempo_in(element)) part_.tempos.push_back({this_measure(), *tempo});
  }

  template <typename Value>
  [[nodiscard]] bool changes_here(const std::vector<FromMeasure<Value>>& changes) const {
    return !changes.empty() && changes.back().measure == this_measure();
  }

  void read_move(pugi::xml_node element, bool back) {
    const pugi::xml_node duration = element.child("duration");
    const std::optional<Ticks> ticks = ticks_.of(text_of(duration));
    if (!ticks) {
      report_time(duration.empty() ? element : duration, kDuration, text_of(duration));
    } else if (!ticks_.move(back ? -*ticks : *ticks)) {
      report_long_bar(element);
    }
    if (chord_) chord_->between = back ? "a backup" : "a forward";
  }

  [[nodiscard]] BarMoment moment(Ticks tick) const {
    const WrittenMeasure& measure = part_.measures.back();
    const auto time = reduced(measure.bar_tick + tick, 4 * part_.ticks_per_quarter);
    return {measure.bar, time.value_or(Fraction{})};
  }

  [[nodiscard]] MusicalPlace place(Ticks tick) const {
    return musical_place(part_, part_.measures.back(), tick);
  }

  void report_time(pugi::xml_node element, std::string_view expected, std::string_view found) {
    reporter_.report("musicxml-time", span_of(element), place(ticks_.now()),
                     fmt::format("expected {}, found {}", expected, quoted(found)));
  }

  void report_long_bar(pugi::xml_node element) {
    MusicalPlace bar;
    bar.bar = part_.measures.back().bar;
    reporter_.report("musicxml-time", span_of(element), bar,
                     "expected a bar of at most 10000 quarter notes, found more");
  }

  /// What a duration that is 0 or negative should have been, by the type of the note; nothing where
  /// the duration is above 0, or the note has no type.
  std::optional<Ticks> mended_duration(const NoteElement& element) {
    const std::string_view text = text_of(element.duration);
    const std::optional<Ticks> ticks = ticks_.of(text.starts_with('-') ? text.substr(1) : text);
    const bool is_wrong = ticks && (text.starts_with('-') || (*ticks == 0 && !element.rest));
    const std::optional<Fraction> value =
        is_wrong ? written_value(element.type, element.dots, element.time_modification)
                 : std::nullopt;
    const std::optional<Ticks> mended = value ? ticks_.of_value(*value) : std::nullopt;
    if (mended) {
      reporter_.report("musicxml-duration", span_of(element.duration),
                       place(element.chord && chord_ ? ticks_.note() : ticks_.now()),
                       fmt::format("expected a duration above 0, found {}", quoted(text)));
    }
    return mended;
  }

  /// The written length; 0 for a grace note, nothing where it is wrong.
  std::optional<Ticks> duration_of(const NoteElement& element) {
    if (element.grace) return 0;
    std::optional<Ticks> ticks = ticks_.of(text_of(element.duration));
    if (ticks.value_or(0) > 0) return ticks;
    if (const std::optional<Ticks> mended = mended_duration(element)) return mended;
    if (!ticks) {
      report_time(element.duration.empty() ? element.element : element.duration, kDuration,
                  text_of(element.duration));
    }
    return ticks;
  }

  void read_note(const NoteElement& element) {
    const bool in_chord = element.chord && chord_;
    const std::optional<Ticks> duration = duration_of(element);
    // Cue notes are another player's; they take their time all the same.
    const bool is_played = !element.rest && !element.cue && !element.unpitched;
    if (element.chord && is_played) report_lone_chord_note(element);
    if (!in_chord) start_chord(element, duration != 0);
    if (!duration) return;
    // Of a chord only the first note takes time.
    if (!in_chord && !ticks_.move(*duration)) return report_long_bar(element.element);
    if (is_played) add_note(element, *duration);
    read_signs(element);
  }

  void read_signs(const NoteElement& element) {
    const Hand hand = hand_of_staff(staff_of(element));
    if (!element.dynamics.empty())
      signs_.read_dynamics(element.dynamics, moment(ticks_.note()), hand);
    if (element.rest && element.fermata) {
      part_.signs.rest_fermatas.push_back({moment(ticks_.note()), hand});
    }
  }

  void start_chord(const NoteElement& element, bool takes_time) {
    ticks_.start_note();
    chord_ = OpenChord{{}, element.rest ? "a rest" : "", takes_time};
  }

  void report_lone_chord_note(const NoteElement& element) {
    if (chord_ && chord_->between.empty()) return;
    reporter_.report("musicxml-chord", span_of(element.element),
                     place(chord_ ? ticks_.note() : ticks_.now()),
                     fmt::format("expected a note right before this note of a chord, found {}",
                                 chord_ ? chord_->between : "none in this measure"));
    if (chord_) chord_->between = {};
  }

  void add_note(const NoteElement& element, Ticks duration) {
    WrittenNote note;
    const std::optional<std::size_t> first = chord_->first;
    note.in_chord = first.has_value();
    note.tick = ticks_.note();
    // A chord takes time or none as its first note does, and is in its voice, whatever its other
    // notes say.
    const bool takes_time = chord_->takes_time && duration > 0;
    note.grace = first ? part_.notes[*first].grace : !takes_time;
    if (!note.grace) {
      note.duration = first && duration == 0 ? part_.notes[*first].duration : duration;
    }
    note.measure = this_measure();
    note.staff = staff_of(element);
    note.breath_after = element.breath_after;
    note.note.tied = element.tied;
    note.note.span = span_of(element.element);
    const std::optional<Pitch> pitch = pitch_in(element.pitch);
    if (!pitch) return report_pitch(element);
    note.note.pitch = *pitch;
    note.voice =
        first ? part_.notes[*first].voice : voices_.number_of(text_of(element.voice), note.staff);
    if (element.has_fingering) add_fingerings(element.element, note, part_);
    part_.voice_count = std::max(part_.voice_count, note.voice + 1);
    read_marks(element, note);
    if (!first) chord_->first = part_.notes.size();
    part_.notes.push_back(std::move(note));
  }

  /// What stands at a note, which is the next of the part.
  void read_marks(const NoteElement& element, WrittenNote& note) {
    note.rolled = element.rolled;
    note.rolls_down = element.rolls_down;
    note.ornament = element.ornament;
    note.beam = element.beam;
    note.note.slurs_end = element.slurs_end;
    note.note.slurs_begin = element.slurs_begin;
    note.note.fermata = element.fermata;
    if (!element.ornament_left_out.empty()) {
      part_.ornaments_left_out.push_back({part_.measures.back().bar, element.ornament_left_out});
    }
    if (!element.has_lyric) return;
    if (const std::optional<Hand> hand = hand_in_lyrics(element.element)) {
      part_.hand_signs.push_back({chord_->first.value_or(part_.notes.size()), note.staff, *hand});
    }
  }

  void read_direction(pugi::xml_node direction) {
    const auto staff = whole_number<std::uint32_t>(text_of(direction.child("staff")));
    signs_.read_direction(direction, moment(ticks_.now()), hand_of_staff(staff.value_or(1)));
    read_words(direction);
  }

  /// What somebody wrote above the bar, which names no hand, or a sign that may name one.
  void read_words(pugi::xml_node direction) {
    const pugi::xml_node words = note_in_words(direction);
    if (words.empty()) return read_hand_sign(direction);
    std::string line = line_of_text(text_of(words));
    if (!line.empty()) part_.words.push_back({this_measure(), std::move(line)});
  }

  void read_hand_sign(pugi::xml_node direction) {
    const std::optional<Hand> hand = hand_in_words(direction);
    if (!hand) return;
    const auto staff = whole_number<std::uint32_t>(text_of(direction.child("staff")));
    part_.hand_signs.push_back({part_.notes.size(), staff.value_or(0), *hand});
  }

  [[nodiscard]] std::uint32_t staff_of(const NoteElement& element) const {
    if (element.staff.empty()) return 1;
    const auto staff = whole_number<std::uint32_t>(text_of(element.staff));
    return std::clamp<std::uint32_t>(staff.value_or(1), 1, part_.staff_count);
  }

  static Hand hand_of_staff(std::uint32_t staff) { return staff > 1 ? Hand::left : Hand::right; }

  void report_pitch(const NoteElement& element) {
    reporter_.report(
        "musicxml-pitch", span_of(element.pitch.empty() ? element.element : element.pitch),
        place(ticks_.note()),
        fmt::format("expected a key of the piano, A0 to C8, found {}", pitch_words(element.pitch)));
  }

  static std::string pitch_words(pugi::xml_node pitch) {
    if (pitch.empty()) return "none";
    std::string words;
    for (const pugi::xml_node child : pitch) {
      words += (words.empty() ? "" : " ") + std::string(text_of(child));
    }
    return quoted(words);
  }

  Reporter& reporter_;
  WrittenPart part_;
  TickCounter ticks_;
  ScoreSignReader signs_;
  BarNumbers numbers_;
  Voices voices_;
  std::int32_t beat_type_ = 4;
  std::optional<OpenChord> chord_;  ///< none before the first note of a measure
};

}  // namespace

WrittenPart read_part(const std::vector<MeasureElement>& measures, Reporter& reporter) {
  return PartReader(reporter).read(measures);
}

}  // namespace fingerturn
