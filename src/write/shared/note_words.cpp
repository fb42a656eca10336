#include "write/shared/note_words.hpp"

#include "score/finger_text.hpp"

#include <array>
#include <optional>
#include <string_view>

#include <fmt/core.h>

namespace fingerturn {
namespace {

bool is_power_of_two(std::int64_t number) { return number > 0 && (number & (number - 1)) == 0; }

/// The plain value 1/n that `factor` turns into `value`; nothing where there is none.
std::optional<Fraction> plain_value(Fraction value, Fraction factor) {
  const std::optional<Fraction> plain = product(value, {factor.denominator, factor.numerator});
  const bool written = plain && plain->numerator == 1 && is_power_of_two(plain->denominator);
  return written ? plain : std::nullopt;
}

struct Ending {
  std::string_view sign;
  Fraction factor;
};

constexpr std::array<Ending, 4> kEndings{
    {{"", {1, 1}}, {".", {3, 2}}, {"..", {7, 4}}, {"t", {2, 3}}}};

struct SpokenValue {
  std::int64_t denominator;
  std::string_view name;
};

constexpr std::array<SpokenValue, 6> kSpoken{{{1, "whole"},
                                              {2, "half"},
                                              {4, "quarter"},
                                              {8, "eighth"},
                                              {16, "sixteenth"},
                                              {32, "thirty-second"}}};

}  // namespace

std::string finger_words(const std::vector<Finger>& fingers, bool suggested) {
  if (fingers.empty()) return "?";
  return finger_text(fingers) + (suggested ? "?" : "");
}

std::string value_words(Fraction value) {
  for (const Ending& ending : kEndings) {
    if (const std::optional<Fraction> plain = plain_value(value, ending.factor)) {
      return "1/" + std::to_string(plain->denominator) + std::string(ending.sign);
    }
  }
  return std::to_string(value.numerator) + "/" + std::to_string(value.denominator);
}

std::string spoken_value(Fraction value) {
  for (const SpokenValue& spoken : kSpoken) {
    if (value == Fraction{1, spoken.denominator}) return std::string(spoken.name);
    const std::optional<Fraction> dotted = product({1, spoken.denominator}, {3, 2});
    if (value == dotted) return "dotted " + std::string(spoken.name);
  }
  return value_words(value);
}

std::string event_words(const Line& line, std::size_t event) {
  std::string words;
  for (const Note& note : line.events[event].notes) {
    if (note.held) continue;
    if (!words.empty()) words += '+';
    words += to_string(note.pitch) + ':' +
             finger_words(fingers_on_key(line, event, note), note.suggested);
  }
  return words;
}

std::string struck_notes_words(const Event& event) {
  std::string words;
  for (const Note& note : event.notes) {
    if (!note.held) words += (words.empty() ? "" : "+") + to_string(note.pitch);
  }
  return (event.grace ? "^" : "") + words;
}

std::string reason_with_suggestion(const AnalysedLine& line, const EventAnalysis& entry) {
  const UsualFingers* usual = usual_fingers_at(line.written(), entry.event);
  std::string reason = reason_of(entry, line.hand());
  return usual == nullptr ? reason : fmt::format("{} Suggested: {}.", reason, usual->words);
}

}  // namespace fingerturn
