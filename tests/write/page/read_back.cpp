#include "write/page/read_back.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <optional>

namespace fingerturn::tests {
namespace {

constexpr double kStaff = 4;
constexpr int kSteps = 7;

Glyph glyph_of(const Ink& ink) { return std::get<GlyphInk>(ink.shape).glyph; }
Point place_of(const Ink& ink) { return std::get<GlyphInk>(ink.shape).at; }
bool is_small(const Ink& ink) { return std::get<GlyphInk>(ink.shape).scale < 1; }
double height_of_middle(const Ink& ink) { return (ink.box.top + ink.box.bottom) / 2; }

int alter_of(Glyph glyph) {
  constexpr std::array kSigns{Glyph::double_flat, Glyph::flat, Glyph::natural, Glyph::sharp,
                              Glyph::double_sharp};
  return static_cast<int>(std::ranges::find(kSigns, glyph) - kSigns.begin()) - 2;
}

/// The inks of a system, with what belongs to which staff.
class Page {
 public:
  Page(const System& system, std::size_t staves) : system_(system) {
    std::size_t line = 0;
    for (const Ink& ink : system.inks) {
      if (ink.kind == InkKind::staff_line && line++ % 5 == 0)
        tops_.push_back(height_of_middle(ink));
    }
    tops_.resize(staves, tops_.empty() ? 0 : tops_.back());
  }

  [[nodiscard]] double top(std::size_t staff) const { return tops_[staff]; }
  /// The staff of an ink: that which is nearest, but for heads far out, which ledger lines join to
  /// theirs, and accidentals, which belong to their heads.
  [[nodiscard]] std::size_t staff_of(const Ink& ink) const {
    if (ink.kind == InkKind::head) return staff_of_head(ink);
    if (ink.kind != InkKind::sign) return nearest_to(height_of_middle(ink));
    const Ink* own = nullptr;
    for (const Ink* head : all(InkKind::head)) {
      const bool is_level = std::abs(place_of(*head).y - place_of(ink).y) < 0.05;
      if (own == nullptr && is_level && head->box.left > ink.box.left) own = head;
    }
    return own == nullptr ? nearest_to(place_of(ink).y) : staff_of_head(*own);
  }

  /// The inks of a kind in the order of their places along time.
  [[nodiscard]] std::vector<const Ink*> all(InkKind kind) const {
    std::vector<const Ink*> found;
    for (const Ink& ink : system_.inks) {
      if (ink.kind == kind) found.push_back(&ink);
    }
    std::ranges::stable_sort(found, {}, [](const Ink* ink) { return ink->box.left; });
    return found;
  }

  /// Where bars end: lines that stand together end one bar, and those that nothing is played before
  /// begin a repeat.
  [[nodiscard]] std::vector<double> bar_ends() const {
    constexpr double kTogether = 2;
    std::vector<double> ends;
    double last = -10;
    for (const Ink* ink : all(InkKind::bar_line)) {
      const double x = (ink->box.left + ink->box.right) / 2;
      if (x - last > kTogether && (ends.empty() || is_played(ends.back(), x))) ends.push_back(x);
      last = x;
    }
    return ends;
  }

 private:
  [[nodiscard]] bool is_played(double from, double to) const {
    return std::ranges::any_of(system_.inks, [&](const Ink& ink) {
      const bool is_one = ink.kind == InkKind::head || ink.kind == InkKind::rest;
      return is_one && ink.box.left > from && ink.box.left < to;
    });
  }

  [[nodiscard]] std::size_t nearest_to(double y) const {
    const auto distance = [&](std::size_t staff) {
      return std::abs(y - tops_[staff] - kStaff / 2);
    };
    std::size_t nearest = 0;
    for (std::size_t staff = 1; staff < tops_.size(); ++staff) {
      if (distance(staff) < distance(nearest)) nearest = staff;
    }
    return nearest;
  }

  [[nodiscard]] std::size_t staff_of_head(const Ink& head) const {
    constexpr double kBeside = 0.75;
    const double y = place_of(head).y;
    for (std::size_t staff = 0; staff < tops_.size(); ++staff) {
      const double below = y - tops_[staff];
      if (below > -kBeside && below < kStaff + kBeside) return staff;
      if (is_joined(head, tops_[staff] + (below < 0 ? -1 : kStaff + 1))) return staff;
    }
    return nearest_to(y);
  }

  /// Whether ledger lines join a head to the staff whose first one is there.
  [[nodiscard]] bool is_joined(const Ink& head, double first) const {
    const double y = place_of(head).y;
    const std::vector<const Ink*> lines = all(InkKind::ledger);
    const auto has_line = [&](double at) {
      return std::ranges::any_of(lines, [&](const Ink* line) {
        return std::abs(height_of_middle(*line) - at) < 0.05 && line->box.left < head.box.right &&
               line->box.right > head.box.left;
      });
    };
    const double step = first < y ? 1 : -1;
    for (double at = first; (y - at) * step > -0.3; at += step) {
      if (!has_line(at)) return false;
    }
    return true;
  }

  const System& system_;
  std::vector<double> tops_;
};

bool is_tie_end(const Ink& tie, const Ink& head, bool at_its_end) {
  const auto& bow = std::get<BowInk>(tie.shape);
  const double x = at_its_end ? bow.to.x : bow.from.x;
  const double edge = at_its_end ? head.box.left : head.box.right;
  return std::abs(x - edge) < 0.35 && std::abs(bow.from.y - place_of(head).y) < 0.7;
}

/// How many beams and flags are at a stem.
int hooks_at(const Page& page, const Ink& stem) {
  const double x = (stem.box.left + stem.box.right) / 2;
  int hooks = 0;
  for (const Ink* ink : page.all(InkKind::beam)) {
    const auto& beam = std::get<BeamInk>(ink->shape);
    if (x < ink->box.left - 0.05 || x > ink->box.right + 0.05) continue;
    const double way = (x - beam.from.x) / (beam.to.x - beam.from.x);
    const double y = beam.from.y + way * (beam.to.y - beam.from.y);
    hooks += y < stem.box.bottom + 0.1 && y + beam.thickness > stem.box.top - 0.1 ? 1 : 0;
  }
  for (const Ink* ink : page.all(InkKind::flag)) {
    if (!std::holds_alternative<GlyphInk>(ink->shape)) continue;
    const Point at = place_of(*ink);
    const bool is_here = std::abs(at.x - stem.box.left) < 0.1 && at.y > stem.box.top - 0.1 &&
                         at.y < stem.box.bottom + 0.1;
    if (!is_here) continue;
    const auto order = static_cast<int>(glyph_of(*ink)) - static_cast<int>(Glyph::flag_8_up);
    hooks += order / 2 + 1;
  }
  return hooks;
}

const Ink* stem_of(const Page& page, const Ink& head) {
  for (const Ink* stem : page.all(InkKind::stem)) {
    const double x = (stem->box.left + stem->box.right) / 2;
    const bool beside = std::abs(x - head.box.left) < 0.15 || std::abs(x - head.box.right) < 0.15;
    const double y = place_of(head).y;
    if (beside && y > stem->box.top - 0.3 && y < stem->box.bottom + 0.3) return stem;
  }
  return nullptr;
}

/// How many dots a head has: they stand in its space, or in the one above its line; where a
/// neighbour's dots are there, in the one below.
int dots_of(const Page& page, const Ink& head, double top) {
  constexpr double kFurthest = 2.9;
  const double y = place_of(head).y;
  const bool on_line = std::lround((y - top) * 2) % 2 == 0;
  const auto dots_at = [&](double height) {
    return std::ranges::count_if(page.all(InkKind::dot), [&](const Ink* dot) {
      const double x = dot->box.left - head.box.right;
      return x > 0 && x < kFurthest && std::abs(place_of(*dot).y - height) < 0.05;
    });
  };
  const bool has_neighbour = std::ranges::any_of(page.all(InkKind::head), [&](const Ink* other) {
    return std::abs(place_of(*other).y - (y - 0.5)) < 0.05 &&
           std::abs(other->box.left - head.box.left) < 1.5;
  });
  if (!on_line) return static_cast<int>(dots_at(y));
  return static_cast<int>(has_neighbour ? dots_at(y + 0.5) : dots_at(y - 0.5));
}

/// The value of a head without regard to tuplets, as a fraction of a whole note.
std::string value_of(const Page& page, const Ink& head, double top) {
  int halvings = 0;
  if (glyph_of(head) == Glyph::head_double_whole) halvings = -1;
  if (glyph_of(head) == Glyph::head_half) halvings = 1;
  if (glyph_of(head) == Glyph::head_black) {
    const Ink* stem = stem_of(page, head);
    if (stem == nullptr) return "no stem";
    halvings = 2 + hooks_at(page, *stem);
  }
  return std::to_string(halvings) +
         std::string(static_cast<std::size_t>(dots_of(page, head, top)), '.');
}

/// Reads a staff from system to system.
class StaffReader {
 public:
  explicit StaffReader(std::size_t staff) : staff_(staff) {}

  void read(const Page& page) {
    keys_.clear();
    std::vector<const Ink*> inks;
    for (const InkKind kind : {InkKind::clef, InkKind::key_sign, InkKind::sign, InkKind::head}) {
      for (const Ink* ink : page.all(kind)) {
        if (page.staff_of(*ink) == staff_) inks.push_back(ink);
      }
    }
    std::ranges::stable_sort(inks, {}, [](const Ink* ink) { return ink->box.left; });
    const std::vector<double> ends = page.bar_ends();
    std::size_t end = 0;
    for (const Ink* ink : inks) {
      while (end < ends.size() && ends[end] < ink->box.left) close_bar(end++);
      look_at(*ink, page);
    }
    while (end < ends.size()) close_bar(end++);
  }

  std::vector<BarRead> take() { return std::move(bars_); }

 private:
  /// The first line of a system ends no bar.
  void close_bar(std::size_t number) {
    if (number == 0) return;
    bars_.push_back(std::move(bar_));
    bar_ = {};
    signs_.clear();
  }

  void look_at(const Ink& ink, const Page& page) {
    const int position =
        static_cast<int>(std::lround((page.top(staff_) + kStaff - place_of(ink).y) * 2));
    switch (ink.kind) {
      case InkKind::clef:
        lowest_ = glyph_of(ink) == Glyph::g_clef ? 30 : 18;
        return;
      case InkKind::key_sign:
        if (!in_key_) keys_.clear();
        in_key_ = true;
        keys_[(position + lowest_) % kSteps] = alter_of(glyph_of(ink));
        return;
      case InkKind::sign:
        waiting_[position] = alter_of(glyph_of(ink));
        return;
      default:
        in_key_ = false;
        read_head(ink, position, page);
    }
  }

  [[nodiscard]] int octaves_at(double x, const Page& page) const {
    int octaves = 0;
    const std::vector<const Ink*> signs = page.all(InkKind::ottava);
    for (std::size_t i = 0; i < signs.size(); ++i) {
      const auto* text = std::get_if<TextInk>(&signs[i]->shape);
      if (text == nullptr || page.staff_of(*signs[i]) != staff_) continue;
      // The line goes on to the last of its strokes before the next sign.
      double end = signs[i]->box.right;
      for (std::size_t k = i + 1; k < signs.size(); ++k) {
        if (std::holds_alternative<TextInk>(signs[k]->shape)) continue;
        const bool is_near =
            std::abs(height_of_middle(*signs[k]) - height_of_middle(*signs[i])) < 1 &&
            signs[k]->box.left - end < 3;
        if (is_near) end = signs[k]->box.right;
      }
      if (x > signs[i]->box.left - 0.8 && x < end + 0.8) octaves += text->words == "8va" ? 1 : -1;
    }
    return octaves;
  }

  void read_head(const Ink& head, int position, const Page& page) {
    if (const auto sign = waiting_.find(position); sign != waiting_.end()) {
      signs_[position] = sign->second;
      waiting_.erase(sign);
    }
    bool tied_to = false;
    bool tied_on = false;
    for (const Ink* tie : page.all(InkKind::tie)) {
      tied_to = tied_to || is_tie_end(*tie, head, true);
      tied_on = tied_on || is_tie_end(*tie, head, false);
    }
    if (tied_to) return;
    const int letter = position + lowest_ + kSteps * octaves_at(head.box.left, page);
    const auto own = signs_.find(position);
    const int alter =
        own != signs_.end() ? own->second : keys_[(letter % kSteps + kSteps) % kSteps];
    const int octave = letter / kSteps;
    const std::string name = pitch_name(letter % kSteps, alter, octave);
    bar_.pitches.insert(name);
    if (is_small(head) || tied_on) return;
    bar_.values.insert(name + " " + value_of(page, head, page.top(staff_)));
  }

  static std::string pitch_name(int step, int alter, int octave) {
    return to_string(Pitch{static_cast<Step>(step), static_cast<std::int8_t>(alter),
                           static_cast<std::int8_t>(octave)});
  }

  std::size_t staff_;
  int lowest_ = 30;
  std::map<int, int> keys_;     ///< alterations by letter
  std::map<int, int> signs_;    ///< that hold in the bar, by position
  std::map<int, int> waiting_;  ///< that stand before their heads
  bool in_key_ = false;
  BarRead bar_;
  std::vector<BarRead> bars_;
};

}  // namespace

std::vector<std::vector<BarRead>> read_back(const std::vector<System>& systems,
                                            std::size_t staves) {
  std::vector<std::vector<BarRead>> read;
  for (std::size_t staff = 0; staff < staves; ++staff) {
    StaffReader reader(staff);
    for (const System& system : systems) reader.read(Page(system, staves));
    read.push_back(reader.take());
  }
  return read;
}

}  // namespace fingerturn::tests
