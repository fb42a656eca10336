#include "scales/task.hpp"

#include "scales/kinds.hpp"
#include "score/line_of_fifths.hpp"

#include <algorithm>
#include <array>
#include <string_view>

#include <fmt/format.h>

namespace fingerturn {
namespace {

constexpr int kSemitones = 12;

constexpr std::array<std::string_view, 3> kInversions{"first", "second", "third"};

/// The place of the third of a scale among the notes of its octave; in a chromatic scale that of
/// the minor one.
std::size_t place_of_third(ScaleKind kind) { return kind == ScaleKind::chromatic ? 3 : 2; }

bool left_has_keynote(HandsApart apart) {
  return apart == HandsApart::third || apart == HandsApart::tenth;
}

/// The place of a hand's lowest note among the notes of an octave.
std::size_t first_note(const ScaleTask& task, Hand hand) {
  const HandsApart apart = task.options.apart;
  if (apart == HandsApart::octave) return static_cast<std::size_t>(task.options.inversion);
  const bool has_keynote = left_has_keynote(apart) == (hand == Hand::left);
  return has_keynote ? 0 : place_of_third(task.name.kind);
}

int fifths_at(const ScaleTask& task, std::size_t place) {
  return notes_of_octave(task.name.kind, task.name.tonic, false)[place];
}

int semitones_to_third(const ScaleTask& task) {
  const int third = semitones_above_c(fifths_at(task, place_of_third(task.name.kind)));
  return (third - semitones_above_c(task.name.tonic) + kSemitones) % kSemitones;
}

/// How far a hand's lowest note lies from the one that the register is told by: in parallel
/// octaves the right hand's.
int offset_of(const ScaleTask& task, Hand hand) {
  const ScaleOptions& options = task.options;
  if (hand == Hand::right) {
    if (options.apart == HandsApart::third) return semitones_to_third(task) - kSemitones;
    return options.apart == HandsApart::tenth ? semitones_to_third(task) : 0;
  }
  if (options.contrary) {
    const int between = options.notes == ScaleNotes::single ? 0 : 1;
    return -kSemitones * (options.octaves + between);
  }
  if (options.apart == HandsApart::sixth) return semitones_to_third(task) - kSemitones;
  return options.notes == ScaleNotes::octaves ? -2 * kSemitones : -kSemitones;
}

/// The hand that --from speaks of.
Hand told_hand(const ScaleTask& task) {
  if (task.options.hand) return *task.options.hand;
  return left_has_keynote(task.options.apart) ? Hand::left : Hand::right;
}

/// The right hand's lowest note where nothing is asked for: it lies from G3 to F#4, an octave lower
/// where the scale is long.
int middle_key(const ScaleTask& task) {
  constexpr int kHighestStart = 66;  // F#4
  constexpr int kLongOctaves = 3;
  int key = midi_number(pitch_at(fifths_at(task, first_note(task, told_hand(task))), 4));
  if (key > kHighestStart) key -= kSemitones;
  return key - (task.options.octaves >= kLongOctaves ? kSemitones : 0);
}

int register_key(const ScaleTask& task) {
  if (!task.options.from) return middle_key(task);
  const bool falls = task.options.direction == ScaleDirection::down;
  const int lowest =
      midi_number(*task.options.from) - (falls ? kSemitones * task.options.octaves : 0);
  return lowest - offset_of(task, told_hand(task));
}

std::string inversion_problem(const ScaleTask& task) {
  const int inversion = task.options.inversion;
  if (inversion == 0) return {};
  if (!is_arpeggio(task.name.kind)) {
    return fmt::format("only arpeggios have inversions, not the {} scale", to_string(task.name));
  }
  const auto most =
      static_cast<int>(notes_of_octave(task.name.kind, task.name.tonic, false).size()) - 1;
  if (inversion > 0 && inversion <= most) return {};
  return fmt::format("{} has inversions 1 to {}, not {}", to_string(task.name), most, inversion);
}

std::string hands_problem(const ScaleTask& task) {
  const ScaleOptions& options = task.options;
  const bool is_apart = options.apart != HandsApart::octave;
  if (!is_apart && !options.contrary) return {};
  if (options.hand) {
    return fmt::format("{} takes both hands, not the {} one alone",
                       is_apart ? "a scale with the hands apart" : "contrary motion",
                       to_string(*options.hand));
  }
  if (!is_apart) return {};
  if (options.contrary) return "hands in contrary motion stay in no thirds, sixths or tenths";
  if (options.notes != ScaleNotes::single) {
    return "hands in thirds, sixths or tenths play single notes, not double ones";
  }
  if (is_arpeggio(task.name.kind)) {
    return fmt::format("only scales have hands in thirds, sixths or tenths, not the {}",
                       to_string(task.name));
  }
  return {};
}

std::string start_problem(const ScaleTask& task) {
  if (!task.options.from) return {};
  const Pitch from = *task.options.from;
  if (!on_the_piano(from)) {
    return fmt::format("{} is not on the piano, whose keys go from A0 to C8", to_string(from));
  }
  const int start = fifths_at(task, first_note(task, told_hand(task)));
  if (pitch_at(start, from.octave) == from) return {};
  return fmt::format("{} starts on {}, not on {}", name_of(task), spoken_note(start),
                     to_string(from));
}

std::string_view words_of_hands(const ScaleOptions& options) {
  if (options.hand) return *options.hand == Hand::right ? "right hand" : "left hand";
  if (options.contrary) return "both hands in contrary motion";
  switch (options.apart) {
    case HandsApart::third:
      return "both hands a third apart";
    case HandsApart::sixth:
      return "both hands a sixth apart";
    case HandsApart::tenth:
      return "both hands a tenth apart";
    case HandsApart::octave:
      break;
  }
  return "both hands";
}

std::string_view words_of_notes(ScaleNotes notes) {
  switch (notes) {
    case ScaleNotes::octaves:
      return " in octaves";
    case ScaleNotes::thirds:
      return " in thirds";
    case ScaleNotes::sixths:
      return " in sixths";
    case ScaleNotes::single:
      break;
  }
  return {};
}

}  // namespace

std::string problem_of(const ScaleTask& task) {
  if (task.options.octaves < 1 || task.options.octaves > kMostScaleOctaves) {
    return fmt::format("a scale has 1 to {} octaves, not {}", kMostScaleOctaves,
                       task.options.octaves);
  }
  if (std::string problem = inversion_problem(task); !problem.empty()) return problem;
  if (std::string problem = hands_problem(task); !problem.empty()) return problem;
  const ScaleNotes notes = task.options.notes;
  const bool takes_scale = notes == ScaleNotes::thirds || notes == ScaleNotes::sixths;
  if (takes_scale && is_arpeggio(task.name.kind)) {
    return fmt::format("only scales go{}, not the {}", words_of_notes(notes), to_string(task.name));
  }
  return start_problem(task);
}

std::vector<HandTask> hand_tasks_of(const ScaleTask& task) {
  const ScaleOptions& options = task.options;
  const int register_at = register_key(task);
  std::vector<HandTask> tasks;
  for (const Hand hand : {Hand::right, Hand::left}) {
    if (options.hand && hand != *options.hand) continue;
    const bool against = options.contrary && hand == Hand::left;
    tasks.push_back({task.name, hand, first_note(task, hand), register_at + offset_of(task, hand),
                     options.octaves, (options.direction == ScaleDirection::down) != against,
                     options.direction == ScaleDirection::up_and_down, options.notes});
  }
  return tasks;
}

std::vector<HandTask> shifted(std::vector<HandTask> tasks, int octaves) {
  for (HandTask& task : tasks) task.lowest_key += kSemitones * octaves;
  return tasks;
}

std::string name_of(const ScaleTask& task) {
  std::string name = to_string(task.name);
  if (task.options.inversion == 0) return name;
  const auto place = static_cast<std::size_t>(task.options.inversion) - 1;
  return fmt::format("{}, {} inversion", name, kInversions.at(place));
}

std::string title_of(const ScaleTask& task) {
  const ScaleOptions& options = task.options;
  std::string title = name_of(task) + (is_arpeggio(task.name.kind) ? "" : " scale");
  title += fmt::format("{}, {}, {} octave{}", words_of_notes(options.notes),
                       words_of_hands(options), options.octaves, options.octaves == 1 ? "" : "s");
  if (options.direction == ScaleDirection::down) title += options.contrary ? ", inward" : ", down";
  if (options.direction == ScaleDirection::up_and_down) {
    title += options.contrary ? ", out and back" : ", up and down";
  }
  return title;
}

}  // namespace fingerturn
