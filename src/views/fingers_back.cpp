#include "fingerturn/fingers_back.hpp"

#include "score/finger_text.hpp"
#include "score/timeline.hpp"
#include "text/numbers.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include <fmt/format.h>

namespace fingerturn {
namespace {

/// What a hand plays in a bar: the places of its events that are no rests.
std::vector<std::size_t> played_in(const Line& line, std::int32_t bar) {
  const auto first = std::ranges::lower_bound(line.events, bar, {}, &Event::bar);
  const auto past = std::ranges::upper_bound(line.events, bar, {}, &Event::bar);
  std::vector<std::size_t> places;
  for (auto event = first; event < past; ++event) {
    if (!event->is_rest()) {
      places.push_back(static_cast<std::size_t>(event - line.events.begin()));
    }
  }
  return places;
}

std::vector<std::int32_t> bars_of(const Line& line) {
  std::vector<std::int32_t> bars;
  for (const Event& event : line.events) {
    if (!event.is_rest() && (bars.empty() || bars.back() != event.bar)) bars.push_back(event.bar);
  }
  return bars;
}

std::vector<int> keys_of(const Event& event) {
  std::vector<int> keys;
  for (const Note& note : event.notes) keys.push_back(midi_number(note.pitch));
  std::ranges::sort(keys);
  return keys;
}

std::string notes_words(const Event& event) {
  std::string words;
  for (const Note& note : event.notes) words += (words.empty() ? "" : "+") + to_string(note.pitch);
  return words;
}

class Matching {
 public:
  explicit Matching(const Score& score) { back_.score = score; }

  void add(const Passage& edited) {
    for (const Line& line : edited.lines) {
      for (const std::int32_t bar : bars_of(line)) {
        if (back_.problem.empty()) add(line, bar);
      }
    }
  }

  FingersBack take(const Score& score) {
    if (!back_.problem.empty()) {
      back_ = {score, {}, {}, 0, std::move(back_.problem)};
    }
    return std::move(back_);
  }

 private:
  Passage& passage() { return back_.score.passages.front(); }

  void add(const Line& edited, std::int32_t bar) {
    const auto line = std::ranges::find(passage().lines, edited.hand, &Line::hand);
    if (line == passage().lines.end()) {
      back_.problem = fmt::format("the score has nothing for the {} hand", to_string(edited.hand));
      return;
    }
    const std::vector<std::size_t> there = played_in(*line, bar);
    const std::vector<std::size_t> here = played_in(edited, bar);
    for (std::size_t i = 0; i < std::max(there.size(), here.size()); ++i) {
      const Event* written = i < there.size() ? &line->events[there[i]] : nullptr;
      const Event* played = i < here.size() ? &edited.events[here[i]] : nullptr;
      const bool fits = written != nullptr && played != nullptr &&
                        keys_of(*written) == keys_of(*played) &&
                        is_same_time(*line, there, edited, here, i);
      if (!fits) return tell_difference(*line, edited, bar, written, played);
    }
    for (std::size_t i = 0; i < here.size(); ++i) add(*line, there[i], edited.events[here[i]]);
  }

  /// Since the first event of the bar, where both know it.
  static bool is_same_time(const Line& line, const std::vector<std::size_t>& there,
                           const Line& edited, const std::vector<std::size_t>& here,
                           std::size_t at) {
    const auto written = time_between(line.events[there.front()], line.events[there[at]]);
    const auto played = time_between(edited.events[here.front()], edited.events[here[at]]);
    return !written || !played || *written == *played;
  }

  void tell_difference(const Line& line, const Line& edited, std::int32_t bar, const Event* written,
                       const Event* played) {
    const auto words = [&](const Passage* of, const Line& in, const Event* event) {
      if (event == nullptr) return std::string("nothing more");
      std::string text = notes_words(*event);
      const auto at = static_cast<std::size_t>(event - in.events.data());
      const auto beat = of == nullptr ? std::nullopt : beat_of(*of, in, at, bar_beginnings(in));
      return beat ? fmt::format("{} on beat {}", text, beat_text(*beat)) : text;
    };
    back_.problem = fmt::format("bar {}, {} hand: {} in the passage, {} in the score", bar,
                                to_string(line.hand), words(nullptr, edited, played),
                                words(&passage(), line, written));
  }

  void add(Line& line, std::size_t place, const Event& played) {
    std::vector<bool> taken(played.notes.size(), false);
    for (Note& note : line.events[place].notes) {
      for (std::size_t i = 0; i < played.notes.size(); ++i) {
        if (taken[i] || midi_number(played.notes[i].pitch) != midi_number(note.pitch)) continue;
        taken[i] = true;
        // Where an excerpt begins with a continuation, its finger is that of the beginning.
        if (note.held == played.notes[i].held) set_fingers(line, place, note, played.notes[i]);
        break;
      }
    }
  }

  void set_fingers(const Line& line, std::size_t place, Note& note, const Note& played) {
    if (played.suggested) {
      ++back_.suggestions;
      return;
    }
    FingerChange change{line.hand,
                        line.events[place].bar,
                        beat_of(passage(), line, place, beginnings_of(line)),
                        note.pitch,
                        note.suggested ? std::vector<Finger>() : written_fingers(note),
                        written_fingers(played)};
    if (change.before == change.after) return;
    note.finger = played.finger;
    note.changes_to = played.changes_to;
    note.suggested = false;
    (change.before.empty() ? back_.added : back_.changed).push_back(std::move(change));
  }

  const std::vector<std::size_t>& beginnings_of(const Line& line) {
    std::vector<std::size_t>& beginnings = beginnings_.at(line.hand == Hand::right ? 0 : 1);
    if (beginnings.empty()) beginnings = bar_beginnings(line);
    return beginnings;
  }

  FingersBack back_;
  std::array<std::vector<std::size_t>, 2> beginnings_;  ///< of the bars, of each hand
};

std::string fingers_words(const std::vector<Finger>& fingers) {
  return fingers.empty() ? "none" : finger_text(fingers);
}

}  // namespace

FingersBack fingers_back(const Score& score, const Score& edited) {
  if (score.passages.size() != 1) {
    return {score,
            {},
            {},
            0,
            fmt::format("the score has {} passages, and one is needed", score.passages.size())};
  }
  Matching matching(score);
  for (const Passage& passage : edited.passages) matching.add(passage);
  return matching.take(score);
}

std::string render(const FingerChange& change) {
  std::string place = to_string(MusicalPlace{{}, change.hand, change.bar, change.beat});
  if (change.before.empty()) {
    return fmt::format("{}: {} on {}", place, fingers_words(change.after), to_string(change.pitch));
  }
  return fmt::format("{}: {} instead of {} on {}", place, fingers_words(change.after),
                     fingers_words(change.before), to_string(change.pitch));
}

}  // namespace fingerturn
