#include "fingering/figures.hpp"

#include "fingering/figure_fingers.hpp"
#include "fingering/figures_in_place.hpp"
#include "scales/kinds.hpp"
#include "scales/task.hpp"
#include "score/line_of_fifths.hpp"

#include <algorithm>
#include <array>
#include <bitset>
#include <cstdlib>
#include <iterator>
#include <string_view>
#include <utility>

#include <fmt/core.h>

namespace fingerturn {
namespace {

constexpr int kOctave = 12;
constexpr int kWidestStep = 5;  // between neighbours of an arpeggio: a fourth
constexpr int kMinorThird = 3;
constexpr int kMajorThird = 4;
constexpr int kMinorSixth = 8;
constexpr int kMajorSixth = 9;
constexpr std::size_t kFewest = 4;  // an arpeggio of a triad over an octave

constexpr std::size_t kNames = kScaleKinds * kOctave;
/// Which scales and arpeggios: one bit for each kind on each key.
using Names = std::bitset<kNames>;

/// Some spelling of a key: the fingers and keys are those of all.
int tonic_of(int key) {
  constexpr int kFifthsInSemitone = 7;
  return key * kFifthsInSemitone % kOctave;
}

std::vector<ScaleName> make_names() {
  std::vector<ScaleName> names;
  for (const ScaleForm& form : scale_forms()) {
    for (int key = 0; key < kOctave; ++key) names.push_back({tonic_of(key), form.kind});
  }
  return names;
}

const std::vector<ScaleName>& names_by_bit() {
  static const std::vector<ScaleName> kNamesByBit = make_names();
  return kNamesByBit;
}

/// The scales and arpeggios that have two keys as neighbours, by the lower of them and their
/// distance.
class StepTable {
 public:
  StepTable() {
    for (std::size_t bit = 0; bit < kNames; ++bit) {
      const ScaleName name = names_by_bit()[bit];
      // The chromatic scale is the same on every key.
      if (name.kind == ScaleKind::chromatic && name.tonic != 0) continue;
      const std::vector<int> notes = notes_of_octave(name.kind, name.tonic, false);
      for (std::size_t i = 0; i < notes.size(); ++i) {
        const int from = semitones_above_c(notes[i]);
        const int to = semitones_above_c(notes[(i + 1) % notes.size()]);
        const int step = (to - from + kOctave) % kOctave;
        if (step <= kWidestStep) at(from, step).set(bit);
      }
    }
  }

  [[nodiscard]] Names names(int lower, int step) const {
    if (step < 1 || step > kWidestStep) return {};
    return steps_.at(place(lower % kOctave, step));
  }

 private:
  static std::size_t place(int lower, int step) {
    return static_cast<std::size_t>(lower) * kWidestStep + static_cast<std::size_t>(step - 1);
  }
  Names& at(int lower, int step) { return steps_.at(place(lower, step)); }

  std::array<Names, std::size_t{kOctave} * kWidestStep> steps_{};
};

enum class DoubleNotes : std::uint8_t { none, thirds, sixths };

/// A stretch of grips that one scale or arpeggio has, rising or falling.
struct Run {
  std::size_t begin = 0;
  std::size_t end = 0;
  bool rises = false;
  Names names;

  [[nodiscard]] std::size_t size() const { return end > begin ? end - begin : 0; }
};

class RunSearch {
 public:
  RunSearch(Hand hand, const std::vector<Grip>& grips) : hand_(hand), grips_(grips) {}

  /// All that cannot be made longer, in the order of their beginnings and of their ends.
  std::vector<Run> found() {
    for (std::size_t at = 1; at < grips_.size(); ++at) add_step(at);
    keep();
    return std::move(runs_);
  }

  [[nodiscard]] int key(std::size_t grip) const { return lower_and_upper(grip).first; }
  [[nodiscard]] std::pair<int, int> lower_and_upper(std::size_t grip) const {
    const std::int32_t near = grips_[grip].keys[0].across;
    const std::int32_t far = grips_[grip].keys.at(grips_[grip].count - std::size_t{1}).across;
    return hand_ == Hand::right ? std::pair(near, far) : std::pair(-far, -near);
  }
  /// Of two keys that are struck together and lie a third or a sixth apart.
  [[nodiscard]] DoubleNotes double_notes_at(std::size_t grip) const {
    if (!has_struck(grip, 2)) return DoubleNotes::none;
    const auto [lower, upper] = lower_and_upper(grip);
    const int width = upper - lower;
    if (width == kMinorThird || width == kMajorThird) return DoubleNotes::thirds;
    return width == kMinorSixth || width == kMajorSixth ? DoubleNotes::sixths : DoubleNotes::none;
  }

 private:
  [[nodiscard]] bool has_struck(std::size_t grip, std::uint8_t count) const {
    return grips_[grip].count == count && grips_[grip].struck_count == count;
  }

  /// The names that have the step which ends at a grip.
  [[nodiscard]] Names names_of_step(std::size_t at) const {
    if (grips_[at].opens) return {};
    const DoubleNotes notes = double_notes_at(at);
    if (notes != DoubleNotes::none && double_notes_at(at - 1) == notes) {
      return names_of_double_notes(at);
    }
    if (!has_struck(at, 1) || !has_struck(at - 1, 1)) return {};
    return names_between(key(at - 1), key(at));
  }

  [[nodiscard]] static Names names_between(int from, int to) {
    static const StepTable kTable;
    return kTable.names(std::min(from, to), std::abs(from - to));
  }

  /// Both voices go the same way, through the same scale; chromatic thirds are minor, chromatic
  /// sixths major.
  [[nodiscard]] Names names_of_double_notes(std::size_t at) const {
    const auto [lower_from, upper_from] = lower_and_upper(at - 1);
    const auto [lower, upper] = lower_and_upper(at);
    if ((lower > lower_from) != (upper > upper_from)) return {};
    Names names = names_between(lower_from, lower) & names_between(upper_from, upper);
    const int width = upper - lower;
    const bool keeps_width = width == upper_from - lower_from;
    const bool chromatic = keeps_width && (width == kMinorThird || width == kMajorSixth);
    for (std::size_t bit = 0; bit < kNames; ++bit) {
      const ScaleKind kind = names_by_bit()[bit].kind;
      if (is_arpeggio(kind) || (kind == ScaleKind::chromatic && !chromatic)) names.reset(bit);
    }
    return names;
  }

  void add_step(std::size_t at) {
    const Names names = names_of_step(at);
    const bool rises = names.any() && key(at) > key(at - 1);
    const Names both = current_.names & names;
    if (current_.size() > 1 && rises == current_.rises && both.any()) {
      current_.names = both;
      current_.end = at + 1;
      return;
    }
    keep();
    current_ = {};
    if (names.none()) return;
    current_ = {at - 1, at + 1, rises, names};
    // What came before may have the new step as well.
    while (current_.begin > 0 && (key(current_.begin) > key(current_.begin - 1)) == rises) {
      const Names more = current_.names & names_of_step(current_.begin);
      if (more.none()) break;
      current_.names = more;
      --current_.begin;
    }
  }

  void keep() {
    if (current_.size() >= kFewest) runs_.push_back(current_);
  }

  Hand hand_;
  const std::vector<Grip>& grips_;
  std::vector<Run> runs_;
  Run current_;
};

/// Of two runs that share more than the note on which they turn the shorter one gives way.
void part_runs(std::vector<Run>& runs) {
  for (std::size_t i = 1; i < runs.size(); ++i) {
    Run& before = runs[i - 1];
    Run& after = runs[i];
    if (after.begin + 1 >= before.end) continue;
    if (before.size() >= after.size()) {
      after.begin = before.end - 1;
    } else {
      before.end = after.begin + 1;
    }
  }
}

/// The chromatic scale is the same on every key: it is that of the lowest.
std::vector<ScaleName> names_from(int lowest, const Names& names) {
  std::vector<ScaleName> found;
  for (std::size_t bit = 0; bit < kNames; ++bit) {
    if (names[bit]) found.push_back(names_by_bit()[bit]);
    if (names[bit] && found.back().kind == ScaleKind::chromatic) {
      found.back().tonic = tonic_of(lowest);
    }
  }
  return found;
}

/// Whether a run is a whole figure or a part of one, if the names that it has are right.
bool may_be_figure(const Run& run, int width) {
  constexpr std::size_t kFewestOfPart = 7;
  return run.size() >= kFewestOfPart || (width > 0 && width % kOctave == 0);
}

std::optional<Figure> figure_of(Hand hand, const Run& run, std::vector<int> keys) {
  if (!run.rises) std::ranges::reverse(keys);
  if (!may_be_figure(run, keys.back() - keys.front())) return std::nullopt;
  const std::vector<ScaleName> names = names_from(keys.front(), run.names);
  RunFingers usual = run_fingers(keys, names, hand);
  if (!usual.is_whole && !may_be_figure(run, 0)) return std::nullopt;
  if (usual.fingers.size() != keys.size()) return std::nullopt;
  if (!run.rises) std::ranges::reverse(usual.fingers);
  return Figure{run.begin,
                run.end,
                usual.name,
                usual.is_whole,
                is_arpeggio(names.front().kind),
                usual.inversion,
                std::move(usual.fingers),
                {}};
}

std::optional<Figure> figure_of_double_notes(Hand hand, const Run& run,
                                             std::vector<std::pair<int, int>> notes) {
  if (!may_be_figure(run, 0)) return std::nullopt;
  if (!run.rises) std::ranges::reverse(notes);
  const std::vector<ScaleName> names = names_from(notes.front().first, run.names);
  RunFingers usual = double_note_fingers(notes, names, hand);
  if (usual.fingers.empty()) return std::nullopt;
  if (!run.rises) std::ranges::reverse(usual.fingers);
  if (!run.rises) std::ranges::reverse(usual.far_fingers);
  return Figure{run.begin,
                run.end,
                usual.name,
                usual.is_whole,
                false,
                0,
                std::move(usual.fingers),
                std::move(usual.far_fingers)};
}

std::optional<Figure> figure_in(const RunSearch& search, Hand hand, const Run& run) {
  std::vector<std::pair<int, int>> double_notes;
  std::vector<int> keys;
  for (std::size_t at = run.begin; at < run.end; ++at) {
    double_notes.push_back(search.lower_and_upper(at));
    keys.push_back(search.key(at));
  }
  if (search.double_notes_at(run.begin) == DoubleNotes::none) {
    return figure_of(hand, run, std::move(keys));
  }
  return figure_of_double_notes(hand, run, std::move(double_notes));
}

std::string_view words_in_place(FigureKind kind) {
  switch (kind) {
    case FigureKind::broken_octaves:
      return "broken octaves";
    case FigureKind::trill:
      return "trill";
    case FigureKind::tremolo:
      return "tremolo";
    case FigureKind::repeated_notes:
      return "repeated note with changing fingers";
    case FigureKind::five_fingers:
      return "five-finger figure";
    case FigureKind::run:
      break;
  }
  return {};
}

void add(std::vector<Figure> more, std::vector<Figure>& figures) {
  std::ranges::move(more, std::back_inserter(figures));
  std::ranges::stable_sort(figures, {}, &Figure::begin);
}

}  // namespace

std::vector<Figure> figures_of(Hand hand, const std::vector<Grip>& grips) {
  RunSearch search(hand, grips);
  std::vector<Run> runs = search.found();
  part_runs(runs);
  std::vector<Figure> figures;
  for (const Run& run : runs) {
    if (run.size() < kFewest) continue;
    if (auto figure = figure_in(search, hand, run)) figures.push_back(std::move(*figure));
  }
  add(broken_octaves(grips), figures);
  add(trills_and_tremolos(grips), figures);
  add(repeated_notes(grips), figures);
  add(five_finger_figures(grips, figures), figures);
  return figures;
}

std::string words_of(const Figure& figure, const Line& line, std::span<const Grip> grips) {
  if (figure.kind != FigureKind::run) {
    return fmt::format("{} (common practice)", words_in_place(figure.kind));
  }
  if (!figure.name) {
    return figure.is_arpeggio ? "an arpeggio that begins with the thumb (common practice)"
                              : "a scale that begins with the thumb (our convention)";
  }
  ScaleName name = *figure.name;
  const int tonic = semitones_above_c(name.tonic);
  for (std::size_t at = figure.begin; at < figure.end; ++at) {
    const Pitch pitch = line.events[grips[at].event].notes.front().pitch;
    if (midi_number(pitch) % kOctave != tonic) continue;
    name.tonic = fifths_of(pitch.step, pitch.alter);
    break;
  }
  if (figure.inversion > 0) {
    return name_of({name, {.inversion = figure.inversion}}) + " (common practice)";
  }
  if (!figure.far_fingers.empty()) {
    const Grip& first = grips[figure.begin];
    const bool thirds = first.keys[1].across - first.keys[0].across <= kMajorThird;
    return fmt::format("{} scale in {} (our convention)", to_string(name),
                       thirds ? "thirds" : "sixths");
  }
  return fmt::format("{}{}{}, fingers of the handbook", figure.is_whole ? "" : "part of ",
                     to_string(name), is_arpeggio(name.kind) ? "" : " scale");
}

void mark_octaves(std::vector<Grip>& grips) noexcept {
  constexpr Finger kOnBlack = 4;
  for (Grip& grip : grips) {
    GripKey& near = grip.keys[0];
    GripKey& far = grip.keys[1];
    const bool is_octave =
        grip.count == 2 && grip.struck_count == 2 && far.across - near.across == kOctave;
    if (!is_octave) continue;
    near.habit = kThumb;
    far.habit = far.black ? kOnBlack : kFifth;
    far.in_whole_figure = !far.black;
  }
}

void mark_figures(const std::vector<Figure>& figures, std::vector<Grip>& grips) noexcept {
  for (const Figure& figure : figures) {
    for (std::size_t at = figure.begin; at < figure.end; ++at) {
      // A turn from a whole figure into a part of one stays the whole one's.
      if (grips[at].keys[0].in_whole_figure && !figure.is_whole) continue;
      const auto mark = [&](GripKey& key, const std::vector<Finger>& fingers) {
        key.habit = fingers[at - figure.begin];
        // As in octaves that are struck together, only the fifth finger is held to so firmly.
        const bool is_octave_fifth =
            figure.kind == FigureKind::broken_octaves && key.habit == kFifth;
        key.in_whole_figure = figure.is_whole || is_octave_fifth;
      };
      mark(grips[at].keys[0], figure.fingers);
      if (!figure.far_fingers.empty()) mark(grips[at].keys[1], figure.far_fingers);
    }
  }
}

}  // namespace fingerturn
