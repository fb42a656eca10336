#pragma once

#include "write/notated/notated.hpp"
#include "write/notated/sounding.hpp"
#include "write/text/columns.hpp"

#include <cstddef>
#include <optional>
#include <vector>

namespace fingerturn {

/// The events of a line in one bar.
using BarEvents = std::vector<ShownEvent>;

/// A hand in a bar. Every step goes through its events once: a bar may be as long as a passage.
class BarHand {
 public:
  BarHand(const Line& line, BarEvents events, Ticks start, std::optional<Ticks> ticks);

  [[nodiscard]] Ticks length() const;
  /// What is written in a bar of that length. `going_on` sounds from the bar before, and takes what
  /// goes on into the next, where that follows.
  NotatedHand written(Ticks length, bool is_followed, std::vector<Sounding>& going_on) const;

 private:
  [[nodiscard]] Ticks onset_of(const Event& event) const;
  [[nodiscard]] Ticks duration_of(const Event& event) const;
  [[nodiscard]] std::vector<Ticks> chord_lengths() const;
  [[nodiscard]] std::vector<Sounding> struck(std::vector<Sounding> sounding) const;
  [[nodiscard]] std::vector<Sounding> sounding(Ticks length, bool is_followed,
                                               std::vector<Sounding>& going_on) const;
  void take_signs(NotatedVoice& voice) const;
  [[nodiscard]] bool is_rolled(std::size_t event) const;
  void set_values(NotatedVoice& voice) const;
  void add_rests(Ticks length, NotatedVoice& voice) const;
  void add_grace_notes(NotatedHand& hand) const;
  [[nodiscard]] NotatedChord chord_of(const Event& event, std::size_t place) const;
  [[nodiscard]] NotatedHand in_a_row() const;

  const Line* line_;
  BarEvents events_;
  Ticks start_;
  std::optional<Ticks> ticks_;
};

}  // namespace fingerturn
