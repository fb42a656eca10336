#include "fingering/line_fingering.hpp"

#include "fingering/figures.hpp"
#include "fingering/instead_at.hpp"
#include "fingering/other_ways.hpp"
#include "fingering/paths.hpp"
#include "fingering/repeats.hpp"
#include "fingering/told_difficulty.hpp"
#include "fingering/usual.hpp"
#include "hand/misplaced_finger.hpp"

#include <algorithm>
#include <utility>

namespace fingerturn {
namespace {

/// Where the notes of each event begin in a row of all notes of the line.
std::vector<std::size_t> places_of_notes(const Line& line) {
  std::vector<std::size_t> places;
  places.reserve(line.events.size() + 1);
  places.push_back(0);
  for (const Event& event : line.events) places.push_back(places.back() + event.notes.size());
  return places;
}

/// The finger that a choice has on a key; 0 where the key is none of the grip's.
Finger finger_on(const Grip& grip, const Choice& choice, std::int32_t where) noexcept {
  for (std::size_t i = 0; i < grip.count; ++i) {
    if (grip.keys[i].across == where) return choice.strikes[i];
  }
  return 0;
}

LineFingering fingering_of(const Line& line, const std::vector<std::size_t>& places,
                           const FingerTask& task, const Path& path) {
  LineFingering fingering;
  fingering.added.resize(places.back());
  fingering.difficulty = told_difficulty(LineCosts(task), path);
  for (std::size_t at = 0; at < task.grips.size(); ++at) {
    const Grip& grip = task.grips[at];
    const Choice& choice = task.choices.of(at)[path.choices[at]];
    const std::vector<Note>& notes = line.events[grip.event].notes;
    for (std::size_t i = 0; i < notes.size(); ++i) {
      if (notes[i].held || notes[i].finger) continue;
      const std::int32_t where = across(line.hand, midi_number(notes[i].pitch));
      fingering.added[places[grip.event] + i] = finger_on(grip, choice, where);
      ++fingering.suggested;
    }
  }
  return fingering;
}

/// The line without the fingers that are probably meant for another note; none where all stay.
std::optional<Line> without_misplaced_fingers(const Line& line,
                                              std::optional<int> reach_semitones) {
  std::optional<Line> bared;
  for (std::size_t at = 0; at < line.events.size(); ++at) {
    const auto misplaced = misplaced_finger(line.hand, line.events[at], reach_semitones);
    if (!misplaced || line.events[at].notes[misplaced->note].suggested) continue;
    if (!bared) bared = line;
    Note& note = bared->events[at].notes[misplaced->note];
    note.finger.reset();
    note.changes_to.clear();
  }
  return bared;
}

/// What is usual is no easier for that: the difficulty that is told does not count it.
Weights without_habits(Weights weights) {
  for (const Term term : {Term::off_handbook, Term::off_figure, Term::off_printed, Term::off_repeat,
                          Term::off_sequence, Term::avoided_pair}) {
    weights.at(static_cast<std::size_t>(term)) = 0;
  }
  return weights;
}

/// Where others than the first are looked for, figures of the trade speak in a low voice: else
/// nobody would hear of another way to finger a scale.
Weights with_light_figures(Weights weights) {
  constexpr std::int32_t kLight = 300;
  weights.at(static_cast<std::size_t>(Term::off_handbook)) = kLight;
  weights.at(static_cast<std::size_t>(Term::off_figure)) = kLight;
  return weights;
}

/// The weights as a player's wishes change them.
Weights wished(Weights weights, const FingerWishes& wishes) {
  constexpr std::int32_t kThumbOnBlack = 4;
  if (wishes.thumb_on_white) {
    weights.at(static_cast<std::size_t>(Term::thumb_on_black)) *= kThumbOnBlack;
  }
  return weights;
}

FingerPairs avoided_by(const FingerWishes& wishes) noexcept {
  const auto is_finger = [](Finger finger) { return kThumb <= finger && finger <= kFifth; };
  FingerPairs pairs;
  for (const FingerPair& pair : wishes.avoid) {
    if (is_finger(pair.one) && is_finger(pair.other)) pairs.add(pair.one, pair.other);
  }
  return pairs;
}

Path easiest_path(const LineCosts& costs) { return easiest_path(costs, Remaining(costs)); }

/// A line with all that its fingers are found by.
class LineFingerer {
 public:
  LineFingerer(const Line& line, const Model& model, const LineOptions& options)
      : line_(line),
        model_{wished(model.weights, options.wishes), model.tables},
        avoided_(avoided_by(options.wishes)),
        plain_weights_(without_habits(model.weights)),
        light_weights_(with_light_figures(model_.weights)),
        spans_(options.reach_semitones),
        grips_(grips_of(line, spans_)),
        choices_(grips_, spans_),
        figures_(figures_of(line.hand, grips_)),
        first_(first_places(groups_again(line, grips_), grips_.size())),
        places_(places_of_notes(line)) {
    mark_figures(figures_, grips_);
    mark_octaves(grips_);
    mark_printed(first_, grips_);
  }

  /// The easiest, to whom what is usual is easy, and others beside it.
  std::vector<LineFingering> fingerings(std::size_t most) {
    const Path easiest = found_with_groups();
    std::vector<LineFingering> found{fingering(easiest)};
    const LineCosts light(task(light_weights_));
    for (const OtherWay& other : other_ways(line_, light, easiest, first_, most - 1)) {
      found.push_back(fingering(other.path));
      found.back().apart = other.apart;
    }
    std::stable_sort(found.begin() + 1, found.end(), [](const auto& left, const auto& right) {
      return left.difficulty < right.difficulty;
    });
    return found;
  }

  /// What others than `given`, or than those found where a 0 stands, would ask for at an event.
  FingersInstead instead(std::size_t event, std::span<const Finger> given) {
    const Path easiest = found_with_groups();
    const auto grip = std::ranges::find(grips_, event, &Grip::event);
    if (grip == grips_.end() || grip->event != event) return {};
    const LineCosts costs(task(model_.weights));
    return InsteadAt(line_, costs, easiest, static_cast<std::size_t>(grip - grips_.begin()))
        .found(given);
  }

 private:
  Path found_with_groups() {
    const LineCosts costs(task(model_.weights));
    Path easiest = easiest_path(costs);
    if (first_.empty()) return easiest;
    mark_again(first_, fingers_of(easiest), grips_);
    return easiest_path(costs);
  }

  [[nodiscard]] std::vector<FoundFingers> fingers_of(const Path& path) const {
    std::vector<FoundFingers> found;
    found.reserve(grips_.size());
    for (std::size_t at = 0; at < grips_.size(); ++at) {
      found.push_back(choices_.of(at)[path.choices[at]].strikes);
    }
    return found;
  }

  [[nodiscard]] FingerTask task(const Weights& weights) const {
    return {grips_, choices_, spans_, weights, model_.tables, avoided_};
  }

  [[nodiscard]] LineFingering fingering(const Path& path) const {
    const FingerTask of = task(plain_weights_);
    LineFingering fingering = fingering_of(line_, places_, of, path);
    fingering.usual = usual_in(line_, of, path, figures_);
    return fingering;
  }

  const Line& line_;
  Model model_;  ///< by the player's wishes
  FingerPairs avoided_;
  Weights plain_weights_;
  Weights light_weights_;
  SpanTable spans_;
  std::vector<Grip> grips_;
  Choices choices_;
  std::vector<Figure> figures_;
  /// Of each grip, where its group came first; empty where none comes again.
  std::vector<std::size_t> first_;
  std::vector<std::size_t> places_;
};

}  // namespace

std::vector<LineFingering> finger_line(const Line& written, const Model& model,
                                       const LineOptions& options) {
  const std::optional<Line> bared = without_misplaced_fingers(written, options.reach_semitones);
  return LineFingerer(bared ? *bared : written, model, options)
      .fingerings(std::max<std::size_t>(options.most, 1));
}

FingersInstead fingers_instead(const Line& written, const Model& model, const LineOptions& options,
                               std::size_t event) {
  Line freed = without_misplaced_fingers(written, options.reach_semitones).value_or(written);
  std::vector<Finger> given;
  for (Note& note : freed.events[event].notes) {
    given.push_back(note.held ? Finger{0} : note.finger.value_or(0));
    if (!note.held) note.finger.reset();
  }
  return LineFingerer(freed, model, options).instead(event, given);
}

}  // namespace fingerturn
