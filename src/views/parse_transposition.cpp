#include "fingerturn/transpose.hpp"
#include "text/numbers.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"
#include "views/interval_names.hpp"

#include <algorithm>
#include <cstdlib>
#include <utility>
#include <vector>

#include <fmt/format.h>

namespace fingerturn {
namespace {

constexpr int kMostSemitonesMoved = 24;
constexpr Interval kTwoOctaves{14, 24};

constexpr std::string_view kTranspositionForm =
    "expected an interval as in \"up a minor third\", semitones as in \"down 2\", or a key as in "
    "\"to E-flat\"";

TranspositionResult refused_transposition(std::string_view text) {
  constexpr std::size_t kMostShown = 40;
  return {std::nullopt, fmt::format("{}, found \"{}\"", kTranspositionForm,
                                    printable(text.substr(0, kMostShown)))};
}

std::vector<std::string> words_in(std::string_view text) {
  std::vector<std::string> words;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find(' '), text.size());
    if (end > 0) words.emplace_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return words;
}

std::optional<int> semitones_in(std::string_view text) {
  if (text.starts_with('+')) text.remove_prefix(1);
  const std::optional<int> number = number_in<int>(text);
  const bool is_near = number && *number >= -kMostSemitonesMoved && *number <= kMostSemitonesMoved;
  return is_near ? number : std::nullopt;
}

/// "minor third", "octave", "two octaves"; upward.
std::optional<Interval> interval_in(std::vector<std::string> words) {
  if (!words.empty() && (words.front() == "a" || words.front() == "an")) words.erase(words.begin());
  if (words == std::vector<std::string>{"two", "octaves"}) {
    return kTwoOctaves;
  }
  if (words.empty() || words.size() > 2) return std::nullopt;
  const std::optional<int> letters = letters_of_interval(words.back());
  if (!letters) return std::nullopt;
  // Only where there is but one is the quality left out.
  const std::string quality = words.size() == 2 ? words.front() : "perfect";
  const std::optional<int> semitones = semitones_of_interval(quality, *letters);
  return semitones ? std::optional(Interval{*letters, *semitones}) : std::nullopt;
}

/// "E-flat", "Eb", "F sharp", "c#".
std::optional<Pitch> tonic_in(const std::vector<std::string>& words) {
  std::string name;
  for (const std::string& word : words) name += word;
  for (const auto& [spoken, sign] : {std::pair("-flat", "b"), std::pair("flat", "b"),
                                     std::pair("-sharp", "#"), std::pair("sharp", "#")}) {
    if (name.ends_with(spoken)) {
      name.replace(name.size() - std::string_view(spoken).size(), std::string::npos, sign);
      break;
    }
  }
  const std::optional<Pitch> pitch = parse_pitch(name + "4");
  return pitch && std::abs(pitch->alter) <= 1 ? pitch : std::nullopt;
}

}  // namespace

TranspositionResult parse_transposition(std::string_view text) {
  const std::vector<std::string> all = words_in(lower_case(text));
  if (all.empty() || all.size() > 5) return refused_transposition(text);
  if (all.size() == 1) {
    const std::optional<int> semitones = semitones_in(all.front());
    return semitones ? TranspositionResult{Transposition{.semitones = semitones}, {}}
                     : refused_transposition(text);
  }
  const std::vector<std::string> rest(all.begin() + 1, all.end());
  if (all.front() == "to") {
    const std::optional<Pitch> tonic = tonic_in(rest);
    return tonic ? TranspositionResult{Transposition{.tonic = tonic}, {}}
                 : refused_transposition(text);
  }
  const int way = all.front() == "up" ? 1 : all.front() == "down" ? -1 : 0;
  if (way == 0) return refused_transposition(text);
  const bool in_semitones =
      rest.size() == 1 || (rest.size() == 2 && lower_case(rest[1]).starts_with("semitone"));
  const std::optional<int> semitones = in_semitones ? semitones_in(rest.front()) : std::nullopt;
  if (semitones && *semitones >= 0) {
    return {Transposition{.semitones = way * *semitones}, {}};
  }
  const std::optional<Interval> interval = interval_in(rest);
  if (!interval) return refused_transposition(text);
  return {Transposition{.interval = Interval{way * interval->letters, way * interval->semitones}},
          {}};
}

}  // namespace fingerturn
