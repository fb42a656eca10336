#include "fingerturn/scale.hpp"

#include "scales/fingers.hpp"
#include "scales/kinds.hpp"
#include "scales/line_of_fifths.hpp"
#include "scales/names.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <span>
#include <utility>

#include <fmt/core.h>

namespace fingerturn {
namespace {

struct Tone {
  Pitch pitch;
  Finger finger = kThumb;
};

/// Which scale is asked for, and how much of it.
struct Task {
  ScaleName name;
  int octaves = 1;
  ScaleDirection direction = ScaleDirection::up;
};

/// The lowest pitch of this name above another one.
Pitch next_above(Pitch below, int fifths) {
  Pitch pitch = pitch_at(fifths, below.octave - 1);
  while (midi_number(pitch) <= midi_number(below)) ++pitch.octave;
  return pitch;
}

/// The notes from the lowest to the highest, as they are played rising or falling.
std::vector<Tone> tones_upward(const Task& task, Hand hand, Pitch lowest, bool falling) {
  const std::vector<int> notes = notes_of_octave(task.name.kind, task.name.tonic, falling);
  const ScaleName fingered{task.name.tonic,
                           falling ? falling_kind(task.name.kind) : task.name.kind};
  std::vector<Tone> tones;
  Pitch pitch = lowest;
  for (const Finger finger : scale_fingers(fingered, hand, task.octaves)) {
    if (!tones.empty()) pitch = next_above(pitch, notes[tones.size() % notes.size()]);
    tones.push_back({pitch, finger});
  }
  return tones;
}

/// The notes as they are played. Up and down, the highest is the first of the way down, so that
/// its finger is the one that leads on.
std::vector<Tone> tones_of(const Task& task, Hand hand, Pitch lowest) {
  std::vector<Tone> down = tones_upward(task, hand, lowest, true);
  std::reverse(down.begin(), down.end());
  if (task.direction == ScaleDirection::down) return down;
  std::vector<Tone> tones = tones_upward(task, hand, lowest, false);
  if (task.direction == ScaleDirection::up) return tones;
  tones.pop_back();
  tones.insert(tones.end(), down.begin(), down.end());
  return tones;
}

constexpr std::int64_t kEighthsInWhole = 8;

/// Two beats of three notes for triads, else four of two.
Meter meter_of(ScaleKind kind) {
  const bool triad = kind == ScaleKind::major_arpeggio || kind == ScaleKind::minor_arpeggio;
  return triad ? Meter{6, 8} : Meter{4, 4};
}

std::size_t eighths_in_bar(Meter meter) {
  return static_cast<std::size_t>(kEighthsInWhole * meter.beats / meter.beat_type);
}

/// Eighth notes, the last of which fills its bar.
Line line_of(const std::vector<Tone>& tones, Hand hand, std::size_t in_bar) {
  Line line;
  line.hand = hand;
  for (std::size_t i = 0; i < tones.size(); ++i) {
    const bool last = i + 1 == tones.size();
    if (i > 0 && i % in_bar == 0) line.bar_lines.push_back({i, BarLineStyle::single});
    Note note;
    note.pitch = tones[i].pitch;
    note.finger = tones[i].finger;
    Event event;
    event.notes.push_back(std::move(note));
    event.onset = reduced(static_cast<std::int64_t>(i), kEighthsInWhole);
    event.duration =
        reduced(static_cast<std::int64_t>(last ? in_bar - i % in_bar : 1), kEighthsInWhole);
    event.bar = static_cast<std::int32_t>(i / in_bar + 1);
    line.events.push_back(std::move(event));
  }
  line.bar_lines.push_back({tones.size(), BarLineStyle::double_bar});
  return line;
}

/// The octave of the lowest note where none is asked for: it lies from G3 to F#4, an octave lower
/// where the scale is long.
int middle_octave(const Task& task) {
  constexpr int kHighestStart = 66;  // F#4
  constexpr int kLongOctaves = 3;
  int octave = midi_number(pitch_at(task.name.tonic, 4)) > kHighestStart ? 3 : 4;
  if (task.octaves >= kLongOctaves) --octave;
  return octave;
}

std::string problem_of(const Task& task, const ScaleOptions& options) {
  if (options.octaves < 1 || options.octaves > kMostScaleOctaves) {
    return fmt::format("a scale has 1 to {} octaves, not {}", kMostScaleOctaves, options.octaves);
  }
  if (!options.from) return {};
  if (!on_the_piano(*options.from)) {
    return fmt::format("{} is not on the piano, whose keys go from A0 to C8",
                       to_string(*options.from));
  }
  const Pitch start = pitch_at(task.name.tonic, options.from->octave);
  if (start == *options.from) return {};
  return fmt::format("{} starts on {}, not on {}", to_string(task.name),
                     spoken_note(task.name.tonic), to_string(*options.from));
}

/// What lies beyond the keys of a piano; empty where nothing does.
std::string range_problem(const Task& task, const Line& line) {
  for (const Event& event : line.events) {
    const Pitch pitch = event.notes.front().pitch;
    if (on_the_piano(pitch)) continue;
    const bool below = midi_number(pitch) < kLowestKey;
    return fmt::format("{} over {} octave{} would need {} in the {} hand, {} key of the piano",
                       to_string(task.name), task.octaves, task.octaves == 1 ? "" : "s",
                       to_string(pitch), to_string(line.hand),
                       below ? "below A0, the lowest" : "above C8, the highest");
  }
  return {};
}

std::string title_of(const Task& task, std::optional<Hand> hand) {
  std::string title = to_string(task.name) + (is_arpeggio(task.name.kind) ? "" : " scale") + ", " +
                      (hand ? to_string(*hand) + " hand" : "both hands") +
                      fmt::format(", {} octave{}", task.octaves, task.octaves == 1 ? "" : "s");
  if (task.direction == ScaleDirection::down) title += ", down";
  if (task.direction == ScaleDirection::up_and_down) title += ", up and down";
  return title;
}

/// What other handbooks have for the kind that rises and for the one that falls; each once.
std::vector<std::string_view> others_of(const Task& task, Hand hand) {
  const ScaleKind falling = falling_kind(task.name.kind);
  const ScaleKind first = task.direction == ScaleDirection::down ? falling : task.name.kind;
  const ScaleKind last = task.direction == ScaleDirection::up ? task.name.kind : falling;
  std::vector<std::string_view> all;
  for (const ScaleKind kind : {first, last}) {
    const std::string_view others = other_fingers({task.name.tonic, kind}, hand);
    if (!others.empty() && (all.empty() || all.back() != others)) all.push_back(others);
  }
  return all;
}

std::vector<std::string> remarks_of(const Task& task, std::span<const Hand> hands) {
  std::vector<std::string> remarks{
      fmt::format("Fingers from memory after {}.", source_of_fingers(task.name.kind))};
  if (task.name.kind == ScaleKind::melodic_minor && task.direction != ScaleDirection::up) {
    remarks.emplace_back("Falling, it has the notes and fingers of the natural minor.");
  }
  for (const Hand hand : hands) {
    for (const std::string_view others : others_of(task, hand)) {
      remarks.push_back(fmt::format("In the {} hand {} (from memory).", to_string(hand), others));
    }
  }
  return remarks;
}

ScaleResult written(const Task& task, const ScaleOptions& options) {
  const std::vector<Hand> hands =
      options.hand ? std::vector<Hand>{*options.hand} : std::vector<Hand>{Hand::right, Hand::left};
  int octave = middle_octave(task);
  if (options.from) {
    const bool falls = task.direction == ScaleDirection::down;
    octave = options.from->octave - (falls ? task.octaves : 0);
  } else if (options.hand == Hand::left) {
    --octave;
  }
  const Meter meter = meter_of(task.name.kind);
  Passage passage;
  passage.title = title_of(task, options.hand);
  passage.meters.push_back({1, meter});
  passage.remarks = remarks_of(task, hands);
  for (const Hand hand : hands) {
    const int below = passage.lines.empty() ? 0 : 1;
    const Pitch lowest = pitch_at(task.name.tonic, octave - below);
    Line line = line_of(tones_of(task, hand, lowest), hand, eighths_in_bar(meter));
    if (std::string problem = range_problem(task, line); !problem.empty()) {
      return {{}, std::move(problem)};
    }
    passage.lines.push_back(std::move(line));
  }
  return {{{std::move(passage)}}, {}};
}

}  // namespace

ScaleResult handbook_scale(std::string_view name, const ScaleOptions& options) {
  ReadScaleName read = read_scale_name(name);
  if (!read.name) return {{}, std::move(read.problem), read.is_unknown};
  const Task task{*read.name, options.octaves, options.direction};
  std::string problem = problem_of(task, options);
  if (!problem.empty()) return {{}, std::move(problem)};
  return written(task, options);
}

std::vector<std::string> handbook_scale_names() {
  std::vector<std::string> names;
  for (const ScaleName name : all_scale_names()) names.push_back(to_string(name));
  return names;
}

}  // namespace fingerturn
