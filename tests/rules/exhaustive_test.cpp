#include "catch.hpp"
#include "fingerturn/analysis.hpp"
#include "rules/against_oracle.hpp"
#include "rules/made_lines.hpp"
#include "rules/random_passage.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <utility>
#include <vector>

/// Everything that is short, compared with the oracle.
namespace fingerturn {
namespace {

/// Analyses a score of one passage and compares each of its lines.
std::string difference_in(const Score& score, OutcomeTally& tally) {
  const Analysis analysis = analyse(score);
  for (std::size_t at = 0; at < score.passages[0].lines.size(); ++at) {
    std::string difference =
        difference_from_oracle(score.passages[0].lines[at], analysis.passages[0].lines[at], tally);
    if (!difference.empty()) return difference;
  }
  return {};
}

/// How far the next key lies from this one: repeated, near, far, up and down.
int key_step(std::size_t number, std::size_t place) {
  constexpr std::array<int, 8> kSteps{0, 1, -1, 2, -2, 4, -5, 7};
  return kSteps.at(scrambled(number, place) % kSteps.size());
}

constexpr int kMiddleKey = 62;

Line line_of_single_notes(Hand hand, std::size_t length) {
  Line line{hand, {}, {}};
  line.events.resize(length);
  for (Event& event : line.events) event.notes.push_back(note_on(kMiddleKey, kNoFinger));
  return line;
}

/// Symbol 0 is a finger that is missing, 1 to 5 are the fingers.
constexpr std::size_t kFingerSymbols = 6;

void write_fingers(const Sequences& fingers, Line& line) {
  int key = kMiddleKey;
  for (std::size_t at = 0; at < fingers.length(); ++at) {
    line.events[at].notes[0] = note_on(key, static_cast<int>(fingers[at]));
    key += key_step(fingers.number(), at);
  }
}

std::string difference_in_finger_sequences(std::size_t length, OutcomeTally& tally) {
  Score score = score_of(
      {line_of_single_notes(Hand::right, length), line_of_single_notes(Hand::left, length)});
  Sequences fingers(kFingerSymbols, length);
  do {
    for (Line& line : score.passages[0].lines) write_fingers(fingers, line);
    std::string difference = difference_in(score, tally);
    if (!difference.empty()) return difference;
  } while (fingers.next());
  return {};
}

void require_every_outcome_but_level(const OutcomeTally& tally) {
  for (const std::size_t crossings : tally.crossings) CHECK(crossings > 0);
  for (const Rotation rotation : {Rotation::preparatory, Rotation::single_rotation,
                                  Rotation::double_rotation, Rotation::undetermined}) {
    CHECK(tally.rotations.at(static_cast<std::size_t>(rotation)) > 0);
  }
  CHECK(tally.without_side > 0);
  CHECK(tally.side_after_gap > 0);
}

TEST_CASE("all finger sequences of up to seven single notes agree with the oracle",
          "[rules][oracle]") {
  constexpr std::size_t kLongest = 7;
  OutcomeTally tally;
  std::size_t sequences = 1;
  std::size_t events = 0;
  for (std::size_t length = 1; length <= kLongest; ++length) {
    sequences *= kFingerSymbols;
    events += 2 * sequences * length;
    REQUIRE(difference_in_finger_sequences(length, tally) == "");
  }
  CHECK(sequences == 279936);
  CHECK(tally.events == events);
  require_every_outcome_but_level(tally);
}

TEST_CASE("two fingers on any two keys agree with the oracle", "[rules][oracle]") {
  constexpr int kWidest = 24;
  OutcomeTally tally;
  Score score =
      score_of({line_of_single_notes(Hand::right, 2), line_of_single_notes(Hand::left, 2)});
  for (int interval = -kWidest; interval <= kWidest; ++interval) {
    for (int pair = 0; pair < 36; ++pair) {
      for (Line& line : score.passages[0].lines) {
        line.events[0].notes[0] = note_on(kMiddleKey, pair / 6);
        line.events[1].notes[0] = note_on(kMiddleKey + interval, pair % 6);
      }
      REQUIRE(difference_in(score, tally) == "");
    }
  }
  CHECK(tally.lines == 2U * 36U * (2U * kWidest + 1U));
  require_every_outcome_but_level(tally);
}

enum class Thing : std::uint8_t { notes, rest, breath, continuation, skipped_bars, trill };

/// Something that may stand in a line.
struct Symbol {
  Thing thing = Thing::notes;
  std::vector<int> fingers;    ///< one for each note
  std::vector<int> changes{};  ///< silent changes on the first of them
  int step = 3;                ///< from each key to the next, in semitones
  bool again = false;          ///< on the keys of the notes before
};

std::vector<Symbol> alphabet() {
  std::vector<Symbol> symbols;
  for (int finger = kNoFinger; finger <= 5; ++finger) symbols.push_back({Thing::notes, {finger}});
  for (int low = 1; low <= 5; ++low) {
    for (int high = low + 1; high <= 5; ++high) symbols.push_back({Thing::notes, {low, high}});
  }
  symbols.push_back({Thing::notes, {1, kNoFinger}});
  symbols.push_back({Thing::notes, {1, 2, 4}});
  symbols.push_back({Thing::notes, {kNoFinger, kNoFinger, kNoFinger}});
  symbols.push_back({Thing::notes, {4}, {1}});
  symbols.push_back({Thing::notes, {1}, {2, 3}});
  symbols.push_back({Thing::notes, {5}, {1}});
  symbols.push_back({Thing::notes, {1, 4}, {}, 12});
  symbols.push_back({Thing::notes, {kNoFinger, 5}, {}, 14});
  symbols.push_back({Thing::notes, {2, 4}, {}, 3, true});
  symbols.push_back({Thing::notes, {kNoFinger, 4}, {}, 3, true});
  symbols.push_back({Thing::notes, {2, 4}, {1}, 3, true});
  symbols.push_back({Thing::trill, {2}});
  symbols.push_back({Thing::rest, {}});
  symbols.push_back({Thing::breath, {}});
  symbols.push_back({Thing::continuation, {2}});
  symbols.push_back({Thing::skipped_bars, {}});
  return symbols;
}

/// Writes symbols one after another.
class Writer {
 public:
  Writer(Line& line, std::size_t number) : line_(line), number_(number) { line_.events.clear(); }

  void write(const Symbol& symbol) {
    switch (symbol.thing) {
      case Thing::notes:
        return write_notes(symbol);
      case Thing::trill:
        write_notes(symbol);
        line_.events.back().ornament = Ornament::trill;
        return;
      case Thing::rest:
        add({});
        return;
      case Thing::breath:
        if (!line_.events.empty()) line_.events.back().breath_after = true;
        return;
      case Thing::continuation:
        if (!line_.events.empty()) hold_last(symbol.fingers[0]);
        return;
      case Thing::skipped_bars:
        bar_ += 2;
        return;
    }
  }

 private:
  Event& add(std::vector<Note> notes) {
    Event event;
    event.notes = std::move(notes);
    event.bar = bar_;
    line_.events.push_back(std::move(event));
    return line_.events.back();
  }

  void write_notes(const Symbol& symbol) {
    if (symbol.again) key_ = last_key_;
    last_key_ = key_;
    std::vector<Note> notes;
    for (std::size_t at = 0; at < symbol.fingers.size(); ++at) {
      notes.push_back(note_on(key_ + symbol.step * static_cast<int>(at), symbol.fingers[at]));
    }
    for (const int finger : symbol.changes) {
      notes[0].changes_to.push_back(static_cast<Finger>(finger));
    }
    add(std::move(notes));
    key_ += key_step(number_, line_.events.size());
  }

  /// The last notes go on; the lowest has this finger written on its continuation.
  void hold_last(int finger) {
    if (line_.events.back().is_rest()) return;
    std::vector<Note> held = line_.events.back().notes;
    for (Note& note : line_.events.back().notes) note.tied = true;
    for (Note& note : held) {
      note.finger.reset();
      note.changes_to.clear();
      note.held = true;
    }
    held[0].finger = static_cast<Finger>(finger);
    add(std::move(held));
  }

  Line& line_;
  std::size_t number_;
  int key_ = kMiddleKey;
  int last_key_ = kMiddleKey;
  std::int32_t bar_ = 1;
};

std::string difference_in_symbol_sequences(const std::vector<Symbol>& symbols, std::size_t length,
                                           OutcomeTally& tally) {
  Score score = score_of({Line{Hand::right, {}, {}}, Line{Hand::left, {}, {}}});
  Sequences sequence(symbols.size(), length);
  do {
    for (Line& line : score.passages[0].lines) {
      Writer writer(line, sequence.number());
      for (std::size_t at = 0; at < length; ++at) writer.write(symbols[sequence[at]]);
    }
    std::string difference = difference_in(score, tally);
    if (!difference.empty()) return difference;
  } while (sequence.next());
  return {};
}

TEST_CASE("all sequences of up to three things that may stand in a line agree with the oracle",
          "[rules][oracle]") {
  constexpr std::size_t kLongest = 3;
  const std::vector<Symbol> symbols = alphabet();
  OutcomeTally tally;
  std::size_t sequences = 1;
  std::size_t lines = 0;
  for (std::size_t length = 1; length <= kLongest; ++length) {
    sequences *= symbols.size();
    lines += 2 * sequences;
    REQUIRE(difference_in_symbol_sequences(symbols, length, tally) == "");
  }
  CHECK(tally.lines == lines);
  CHECK(tally.rotations.at(static_cast<std::size_t>(Rotation::level)) > 0);
  require_every_outcome_but_level(tally);
}

/// What the rules tell apart most finely, so that long rows of it can be tried.
std::vector<Symbol> core_alphabet() {
  return {{Thing::notes, {1}},
          {Thing::notes, {4}},
          {Thing::notes, {5}, {1}},
          {Thing::continuation, {2}},
          {Thing::notes, {1, 4}, {}, 12},
          {Thing::notes, {2, 4}, {}, 3, true}};
}

TEST_CASE("all sequences of up to seven notes, changes, holds and octaves agree with the oracle",
          "[rules][oracle]") {
  constexpr std::size_t kLongest = 7;
  OutcomeTally tally;
  for (std::size_t length = 1; length <= kLongest; ++length) {
    REQUIRE(difference_in_symbol_sequences(core_alphabet(), length, tally) == "");
  }
  CHECK(tally.lines == 2U * 335922U);
}

TEST_CASE("long passages made by chance agree with the oracle", "[rules][oracle]") {
  constexpr int kPassages = 400;
  constexpr std::size_t kEvents = 120;
  const std::uint64_t seed = seed_of_this_run();
  INFO("repeat with " << kSeedVariable << "=" << seed);
  Chance chance(seed);
  OutcomeTally tally;
  for (int passage = 0; passage < kPassages; ++passage) {
    REQUIRE(difference_in(random_score(chance, kEvents), tally) == "");
  }
  CHECK(tally.gestures > tally.lines);
  CHECK(tally.rotations.at(static_cast<std::size_t>(Rotation::level)) > 0);
  require_every_outcome_but_level(tally);
}

}  // namespace
}  // namespace fingerturn
