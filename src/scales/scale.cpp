#include "fingerturn/scale.hpp"

#include "scales/kinds.hpp"
#include "scales/names.hpp"
#include "scales/remarks.hpp"
#include "scales/task.hpp"
#include "scales/tones.hpp"

#include <cstddef>
#include <cstdint>
#include <utility>

#include <fmt/core.h>

namespace fingerturn {
namespace {

constexpr std::int64_t kEighthsInWhole = 8;

/// Two beats of three notes for triads, else four of two; of double notes half of that, so that a
/// bar keeps to a line of text.
Meter meter_of(const ScaleTask& task) {
  const ScaleKind kind = task.name.kind;
  const bool triad = kind == ScaleKind::major_arpeggio || kind == ScaleKind::minor_arpeggio;
  if (task.options.notes == ScaleNotes::single) return triad ? Meter{6, 8} : Meter{4, 4};
  return triad ? Meter{3, 8} : Meter{2, 4};
}

std::size_t eighths_in_bar(Meter meter) {
  return static_cast<std::size_t>(kEighthsInWhole * meter.beats / meter.beat_type);
}

/// Eighth notes, the last of which fills its bar.
Line line_of(std::vector<Tone> tones, Hand hand, std::size_t in_bar) {
  Line line;
  line.hand = hand;
  for (std::size_t i = 0; i < tones.size(); ++i) {
    const bool last = i + 1 == tones.size();
    if (i > 0 && i % in_bar == 0) line.bar_lines.push_back({i, BarLineStyle::single});
    Event event;
    event.notes = std::move(tones[i]);
    event.onset = reduced(static_cast<std::int64_t>(i), kEighthsInWhole);
    event.duration =
        reduced(static_cast<std::int64_t>(last ? in_bar - i % in_bar : 1), kEighthsInWhole);
    event.bar = static_cast<std::int32_t>(i / in_bar + 1);
    line.events.push_back(std::move(event));
  }
  line.bar_lines.push_back({tones.size(), BarLineStyle::double_bar});
  return line;
}

/// What lies beyond the keys of a piano; empty where nothing does.
std::string range_problem(const ScaleTask& task, const Passage& passage) {
  for (const Line& line : passage.lines) {
    for (const Event& event : line.events) {
      for (const Note& note : event.notes) {
        if (on_the_piano(note.pitch)) continue;
        const bool below = midi_number(note.pitch) < kLowestKey;
        return fmt::format(
            "{} over {} octave{} would need {} in the {} hand, {} key of the piano", name_of(task),
            task.options.octaves, task.options.octaves == 1 ? "" : "s", to_string(note.pitch),
            to_string(line.hand), below ? "below A0, the lowest" : "above C8, the highest");
      }
    }
  }
  return {};
}

Passage passage_of(const ScaleTask& task, const std::vector<HandTask>& hands) {
  const Meter meter = meter_of(task);
  Passage passage;
  passage.title = title_of(task);
  passage.meters.push_back({1, meter});
  passage.remarks = remarks_of(task, hands);
  for (const HandTask& hand : hands) {
    passage.lines.push_back(line_of(tones_of(hand), hand.hand, eighths_in_bar(meter)));
  }
  return passage;
}

/// Where it has no room in a middle register, it lies an octave lower, or one or two higher.
ScaleResult written(const ScaleTask& task) {
  const std::vector<HandTask> hands = hand_tasks_of(task);
  std::string problem;
  for (const int octaves : {0, -1, 1, 2}) {
    Passage passage = passage_of(task, shifted(hands, octaves));
    std::string found = range_problem(task, passage);
    if (found.empty()) return {{{std::move(passage)}}, {}};
    if (octaves == 0) problem = std::move(found);
    if (task.options.from) break;
  }
  return {{}, std::move(problem)};
}

}  // namespace

ScaleResult handbook_scale(std::string_view name, const ScaleOptions& options) {
  ReadScaleName read = read_scale_name(name);
  if (!read.name) return {{}, std::move(read.problem), read.is_unknown};
  const ScaleTask task{*read.name, options};
  std::string problem = problem_of(task);
  if (!problem.empty()) return {{}, std::move(problem)};
  return written(task);
}

std::vector<std::string> handbook_scale_names() {
  std::vector<std::string> names;
  for (const ScaleName name : all_scale_names()) names.push_back(to_string(name));
  return names;
}

}  // namespace fingerturn
