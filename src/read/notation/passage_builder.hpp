#pragma once

#include "fingerturn/score.hpp"
#include "read/notation/note.hpp"
#include "read/reporter.hpp"

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace fingerturn {

/// One hand's line while it is being read.
struct HandInProgress {
  Line line;
  std::optional<Fraction> value;  ///< the running note value
  NotesBefore before;
  std::size_t next_key = 0;  ///< the first of the key lines that is not reached yet
  std::int32_t bar = 1;      ///< the number of the bar that is being filled
  bool bar_has_events = false;
  std::optional<std::int32_t> next_bar;  ///< what a header numbered the bar after this one
};

/// Puts a passage together from what its lines say, in their order, and checks it as a whole when
/// it is finished.
class PassageBuilder {
 public:
  explicit PassageBuilder(Span place) : place_(place) {}

  Passage& passage() { return passage_; }
  HandInProgress& current() { return hands_[static_cast<std::size_t>(hand_)]; }
  void choose_hand(Hand hand) { hand_ = hand; }
  /// What stands before the next note of the hand.
  NotesBefore& before_next_note();
  [[nodiscard]] bool has_events() const;

  /// Notes that are struck together or, in a rolled chord, one after another.
  void add_notes(std::vector<std::vector<Note>> struck, bool grace, Span span);
  void add_rest(Span span);
  /// A sign above the last event; false where there is no note to have it.
  bool add_ornament(Ornament ornament);
  /// A breath mark after the last event; at the beginning it has nothing to end.
  void add_breath();
  void add_bar_line(BarLineStyle style);

  /// Numbers the next bar of both hands.
  void number_next_bar(std::int32_t number, Span place, Reporter& reporter);
  void set_meter(Meter meter) { passage_.meters.push_back({first_open_bar(), meter}); }
  void set_tempo(Tempo tempo) { passage_.tempos.push_back({first_open_bar(), tempo}); }

  /// Words above the next bar.
  void add_note(std::string text) { passage_.notes.push_back({first_open_bar(), std::move(text)}); }
  void add_comment(std::string lines);
  /// A key holds from here on in the hand that is being written, in the other from this bar on.
  void set_key(KeySignature key);

  Passage finish(Reporter& reporter);

 private:
  Event& add_event(std::vector<Note> notes, std::optional<Fraction> value, Span span);
  /// The first bar number that no event has yet.
  [[nodiscard]] std::int32_t first_open_bar() const;

  /// The number of the bar that is being filled, or of one before the next.
  [[nodiscard]] std::int32_t open_bar() const;

  Span place_;
  Passage passage_;
  std::vector<FromBar<KeySignature>> key_lines_;
  Hand hand_ = Hand::right;
  std::array<HandInProgress, 2> hands_{{{{Hand::right, {}, {}}, {}, {}, 0, 1, false, {}},
                                        {{Hand::left, {}, {}}, {}, {}, 0, 1, false, {}}}};
};

}  // namespace fingerturn
