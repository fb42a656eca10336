#pragma once

#include "fingerturn/fraction.hpp"
#include "fingerturn/score.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace fingerturn {

/// Sets the onset of every event from the note values. Bars of the same number stand together: a
/// bar begins where the longest hand has filled the bars before it. An event without a known
/// value, or after a bar whose length no hand knows, has no onset. False where the sums are
/// beyond exact arithmetic; the onsets that were not reached are then unknown.
bool set_onsets(Passage& passage);

/// The time from one event to another; none where it is not known.
std::optional<Fraction> time_between(const Event& one, const Event& other) noexcept;

/// Moves each meter, tempo and key to the first bar at or after it that holds an event, drops those
/// past the last bar, and keeps the last of several that meet. Notes and comments are moved in the
/// same way, but all are kept: notes past the last bar with it, comments behind it.
void settle_changes(Passage& passage);

/// The meter that holds in a bar; null where none is known.
const Meter* meter_in_bar(const Passage& passage, std::int32_t bar) noexcept;

/// The places in `Line::events` at which another bar begins, rising.
std::vector<std::size_t> bar_beginnings(const Line& line);

/// The last of the bar beginnings that is not after an event.
std::size_t bar_beginning(const std::vector<std::size_t>& beginnings, std::size_t event) noexcept;

/// The beat on which something falls that begins at `onset` in a bar that begins at `bar_onset`,
/// counted from 1 in the meter's beats: half a beat after the second is 5/2. None where 64 bits
/// cannot hold it.
std::optional<Fraction> beat_at(const Meter& meter, Fraction bar_onset, Fraction onset) noexcept;

/// The beat on which an event of a line of the passage begins, as beat_at counts it; `beginnings`
/// are the bar beginnings of the line. None where the meter or the time is not known.
std::optional<Fraction> beat_of(const Passage& passage, const Line& line, std::size_t event,
                                const std::vector<std::size_t>& beginnings);

/// An event that is struck, by its place in Line::events, and its beat.
struct StruckAt {
  std::size_t event = 0;
  Fraction beat;
};

/// What a line of the passage strikes at a moment, a grace note only where nothing else is; none
/// where it strikes nothing then, or beats are not known.
std::optional<StruckAt> struck_at(const Passage& passage, const Line& line,
                                  const BeatInBar& moment);

/// The tempo that holds in a bar; null where none is known.
const Tempo* tempo_in_bar(const Passage& passage, std::int32_t bar) noexcept;

/// The key signature that holds in a bar; without signs where none is known.
KeySignature key_in_bar(const Passage& passage, std::int32_t bar) noexcept;

}  // namespace fingerturn
