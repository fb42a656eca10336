#include "write/random_score.hpp"

#include "score/ties.hpp"
#include "score/timeline.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <string>
#include <string_view>
#include <utility>

namespace fingerturn::tests {
namespace {

/// Pieces of titles: all that has a meaning somewhere in the notation or in a report.
constexpr std::array<std::string_view, 22> kWords{
    "Lantern",      "Street",     "no.#5",       "\u00C4\u00F6\u00DF",
    "\u266F\u266D", "\"quoted\"", "back\\slash", "C4:1",
    "|:",           ",",          "RH:",         "passage:",
    "1/8",          "<b>&amp;",   "a#b#",        "\u4E2D\u6587",
    "\u2014",       "'",          "{}",          "%s",
    "x\u00A0y",     "e\u0301"};

constexpr std::array<Fraction, 14> kValues{{{1, 1},
                                            {1, 2},
                                            {1, 4},
                                            {1, 8},
                                            {1, 16},
                                            {3, 8},
                                            {3, 16},
                                            {7, 16},
                                            {1, 12},
                                            {1, 6},
                                            {5, 7},
                                            {9, 10},
                                            {11, 3},
                                            {1, 128}}};

std::string random_title(Chance& chance) {
  if (chance.one_in(4)) return {};
  std::string title = chance.one_in(8) ? "#" : "";
  for (std::size_t count = 1 + chance.below(4); count > 0; --count) {
    if (!title.empty() && title != "#") title += chance.one_in(5) ? "  " : " ";
    title += chance.one_of(kWords);
  }
  return title;
}

/// A hand's line while it is made up.
class LineMaker {
 public:
  LineMaker(Hand hand, Chance& chance) : chance_(chance) { line_.hand = hand; }

  Line make() {
    std::int32_t bar = chance_.one_in(3) ? chance_.between(0, 30) : 1;
    if (chance_.one_in(5)) add_bar_line(BarLineStyle::repeat_start);
    for (std::size_t bars = 1 + chance_.below(8); bars > 0; --bars) {
      add_bar(bar);
      bar += chance_.one_in(8) ? chance_.between(2, 9) : 1;
      if (bars > 1 || chance_.one_in(2)) add_bar_line(random_style());
    }
    resolve_ties(line_);
    return std::move(line_);
  }

 private:
  void add_bar_line(BarLineStyle style) { line_.bar_lines.push_back({line_.events.size(), style}); }

  BarLineStyle random_style() {
    if (!chance_.one_in(3)) return BarLineStyle::single;
    return static_cast<BarLineStyle>(chance_.below(5));
  }

  void add_bar(std::int32_t bar) {
    for (std::size_t count = 1 + chance_.below(7); count > 0; --count) {
      if (chance_.one_in(value_ ? 4 : 10)) value_ = chance_.one_of(kValues);
      line_.events.push_back(random_event(bar));
    }
  }

  Event random_event(std::int32_t bar) {
    Event event;
    event.bar = bar;
    event.duration = value_;
    event.breath_after = chance_.one_in(9);
    if (chance_.one_in(8)) return event;
    event.grace = chance_.one_in(7);
    if (event.grace && value_) event.duration = Fraction{};
    event.notes = random_notes();
    return event;
  }

  std::vector<Note> random_notes() {
    std::vector<Note> notes;
    for (std::size_t count = chance_.one_in(4) ? 1 + chance_.below(5) : 1; count > 0; --count) {
      Note note = random_note();
      const bool key_taken = std::any_of(notes.begin(), notes.end(), [&note](const Note& other) {
        return midi_number(other.pitch) == midi_number(note.pitch);
      });
      if (!key_taken) notes.push_back(std::move(note));
    }
    std::sort(notes.begin(), notes.end(), [](const Note& left, const Note& right) {
      return midi_number(left.pitch) < midi_number(right.pitch);
    });
    return notes;
  }

  /// A pitch anywhere on the piano, often the one before, so that ties have something to lead to.
  Pitch random_pitch() {
    if (chance_.one_in(3) && on_the_piano(last_)) return last_;
    do {
      last_ = {static_cast<Step>(chance_.below(7)),
               static_cast<std::int8_t>(chance_.between(-2, 2)),
               static_cast<std::int8_t>(chance_.between(0, 8))};
    } while (!on_the_piano(last_));
    return last_;
  }

  Finger random_finger() { return static_cast<Finger>(chance_.between(1, 5)); }

  Note random_note() {
    Note note;
    note.pitch = random_pitch();
    note.tied = chance_.one_in(6);
    if (chance_.one_in(7)) return note;
    note.finger = random_finger();
    for (Finger last = *note.finger; chance_.one_in(8); last = note.changes_to.back()) {
      note.changes_to.push_back(last == 5 ? Finger{1} : static_cast<Finger>(last + 1));
    }
    note.suggested = chance_.one_in(9);
    return note;
  }

  Chance& chance_;
  Line line_;
  std::optional<Fraction> value_;
  Pitch last_;
};

KeySignature random_key(Chance& chance) {
  return {static_cast<std::int8_t>(chance.between(-7, 7)), static_cast<Mode>(chance.below(3))};
}

void add_changes(Passage& passage, Chance& chance) {
  std::int32_t bar = 0;
  for (std::size_t count = chance.below(4); count > 0; --count, bar += chance.between(1, 4)) {
    passage.meters.push_back({bar, {chance.between(1, 12), 1 << chance.between(0, 5)}});
  }
  bar = 0;
  for (std::size_t count = chance.below(4); count > 0; --count, bar += chance.between(1, 4)) {
    passage.tempos.push_back(
        {bar, {chance.one_of(kValues), static_cast<double>(chance.between(4, 8000)) / 4}});
  }
  bar = 0;
  for (std::size_t count = chance.below(4); count > 0; --count, bar += chance.between(1, 4)) {
    passage.keys.push_back({bar, random_key(chance)});
  }
  bar = 0;
  for (std::size_t count = chance.below(4); count > 0; --count, bar += chance.between(0, 4)) {
    passage.notes.push_back({bar, "x" + random_title(chance)});
  }
}

Passage random_passage(Chance& chance) {
  Passage passage;
  passage.title = random_title(chance);
  passage.composer = random_title(chance);
  passage.source = random_title(chance);
  if (chance.one_in(3)) passage.reach_semitones = chance.between(7, 24);
  const std::size_t hands = chance.below(8);
  if (hands != 0) passage.lines.push_back(LineMaker(Hand::right, chance).make());
  if (hands > 4) passage.lines.push_back(LineMaker(Hand::left, chance).make());
  if (hands == 1) passage.lines.front().hand = Hand::left;
  add_changes(passage, chance);
  settle_changes(passage);
  set_onsets(passage);
  return passage;
}

}  // namespace

Score random_score(std::uint64_t seed) {
  Chance chance(seed);
  Score score;
  for (std::size_t count = 1 + chance.below(3); count > 0; --count) {
    score.passages.push_back(random_passage(chance));
  }
  return score;
}

}  // namespace fingerturn::tests
