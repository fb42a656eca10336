#include "read/musicxml/fingering.hpp"

#include "fingerturn/read.hpp"
#include "read/musicxml/element.hpp"

#include <algorithm>
#include <span>
#include <utility>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// What may stand between and around finger numbers: blanks, the signs that editors join two
/// numbers by, and brackets.
bool is_between_fingers(char sign) {
  constexpr std::string_view kBetween = " \t\r\n-_.,()[]~";
  return kBetween.find(sign) != std::string_view::npos;
}

/// Whether a text begins with what may stand between fingers; that is dropped.
bool drop_between_fingers(std::string_view& text) {
  for (const std::string_view dash : {"\xE2\x80\x93", "\xE2\x80\x94", "\xE2\x80\x90"}) {
    if (!text.starts_with(dash)) continue;
    text.remove_prefix(dash.size());
    return true;
  }
  if (!is_between_fingers(text.front())) return false;
  text.remove_prefix(1);
  return true;
}

/// Whether notations hold a suggestion, and in the place of which finger.
struct SuggestionLevel {
  bool suggested = false;
  Finger in_place_of = 0;  ///< 0: of none
};

SuggestionLevel suggestion_level(pugi::xml_node notations) {
  for (const pugi::xml_node level : notations.children("level")) {
    std::string_view text = text_of(level);
    if (!text.starts_with(kSuggestionLevel)) continue;
    text.remove_prefix(kSuggestionLevel.size());
    if (text.empty()) return {true, 0};
    if (!text.starts_with(kInPlaceOf)) continue;
    const std::vector<Finger> finger = fingers_in(text.substr(kInPlaceOf.size())).fingers;
    return {true, finger.empty() ? Finger{0} : finger.front()};
  }
  return {};
}

void add_plain(const std::vector<Finger>& fingers, Note& note) {
  for (const Finger finger : fingers) {
    if (!note.finger) {
      note.finger = finger;
    } else {
      note.changes_to.push_back(finger);
    }
  }
}

void add_problem(pugi::xml_node element, const FingerText& found, std::size_t place,
                 std::vector<NoteProblem>& problems) {
  const std::string text = quoted(text_of(element));
  if (found.out_of_range) {
    problems.push_back({place, "finger-range", span_of(element),
                        fmt::format("expected a finger from 1 to 5, found {}", text)});
  } else {
    problems.push_back({place, "fingering", span_of(element),
                        fmt::format("expected a finger number, found {}", text)});
  }
}

void add_technical(pugi::xml_node technical, const SuggestionLevel& level, WrittenNote& note,
                   WrittenPart& part) {
  const std::size_t place = part.notes.size();
  std::vector<Finger> suggestion;
  for (const pugi::xml_node element : technical.children("fingering")) {
    const FingerText found = fingers_in(element.text().get());
    if (found.fingers.empty()) {
      add_problem(element, found, place, part.problems);
    } else if (is_yes(element.attribute("alternate"))) {
      for (const Finger finger : found.fingers) note.note.alternatives.push_back(finger);
    } else if (level.suggested) {
      suggestion.insert(suggestion.end(), found.fingers.begin(), found.fingers.end());
    } else {
      const bool says_what_it_is = is_yes(element.attribute("substitution"));
      if (!says_what_it_is)
        note.stacked_fingers += static_cast<std::uint32_t>(found.fingers.size());
      add_plain(found.fingers, note.note);
    }
  }
  if (!suggestion.empty()) {
    part.suggestions.push_back({place, std::move(suggestion), level.in_place_of});
  }
}

using Chord = std::span<WrittenNote>;

bool only_first_has_fingers(Chord chord) {
  return std::all_of(chord.begin() + 1, chord.end(),
                     [](const WrittenNote& note) { return !note.note.finger; });
}

void spread(Chord chord, Hand hand) {
  std::vector<Finger> fingers = written_fingers(chord.front().note);
  std::sort(fingers.begin(), fingers.end());
  if (hand == Hand::left) std::reverse(fingers.begin(), fingers.end());
  std::vector<WrittenNote*> rising;
  for (WrittenNote& note : chord) rising.push_back(&note);
  std::stable_sort(rising.begin(), rising.end(),
                   [](const WrittenNote* lower, const WrittenNote* upper) {
                     return midi_number(lower->note.pitch) < midi_number(upper->note.pitch);
                   });
  chord.front().note.changes_to.clear();
  for (std::size_t i = 0; i < rising.size(); ++i) rising[i]->note.finger = fingers[i];
}

void take_off(WrittenNote& note, std::size_t place, std::size_t notes,
              std::vector<NoteProblem>& problems) {
  problems.push_back({place, "fingering-count", note.note.span,
                      fmt::format("expected one finger for each of the {} notes of the chord, "
                                  "found {} on its first note and no telling whose they are",
                                  notes, note.stacked_fingers)});
  note.note.finger.reset();
  note.note.changes_to.clear();
}

/// Where a note has several suggestions the first one holds.
void take_suggestion(const SuggestedFingers& suggestion, Note& note) {
  const bool in_its_place = !note.suggested && note.finger == suggestion.in_place_of;
  if (note.finger && !in_its_place) return;
  note.set_aside = std::exchange(note.finger, std::nullopt);
  note.changes_to.clear();
  add_plain(suggestion.fingers, note);
  note.suggested = true;
}

/// A change to the finger that is on the key already is none.
void drop_idle_changes(Note& note) {
  Finger last = note.finger.value_or(0);
  std::erase_if(note.changes_to, [&last](Finger finger) {
    const bool idle = finger == last;
    last = finger;
    return idle;
  });
}

}  // namespace

FingerText fingers_in(std::string_view text) {
  constexpr std::size_t kLongest = 64;
  FingerText found;
  if (text.size() > kLongest) return found;
  while (!text.empty()) {
    if (drop_between_fingers(text)) continue;
    const char sign = text.front();
    text.remove_prefix(1);
    if (sign < '0' || sign > '9') return {};
    found.out_of_range |= sign < '1' || sign > '5';
    found.fingers.push_back(static_cast<Finger>(sign - '0'));
  }
  if (found.out_of_range) found.fingers.clear();
  return found;
}

void add_fingerings(pugi::xml_node element, WrittenNote& note, WrittenPart& part) {
  for (const pugi::xml_node notations : element.children("notations")) {
    const SuggestionLevel level = suggestion_level(notations);
    for (const pugi::xml_node technical : notations.children("technical")) {
      add_technical(technical, level, note, part);
    }
  }
}

void settle_fingers(WrittenPart& part) {
  const std::span<WrittenNote> notes(part.notes);
  for (std::size_t begin = 0; begin < notes.size(); ++begin) {
    const std::uint32_t stacked = notes[begin].stacked_fingers;
    if (stacked < 2 || notes[begin].in_chord) continue;
    std::size_t end = begin + 1;
    while (end < notes.size() && notes[end].in_chord) ++end;
    const Chord chord = notes.subspan(begin, end - begin);
    if (chord.size() < 2 || !only_first_has_fingers(chord)) continue;
    const std::size_t written = written_fingers(chord.front().note).size();
    if (stacked == chord.size() && written == stacked) {
      spread(chord, chord.front().hand);
    } else {
      take_off(chord.front(), begin, chord.size(), part.problems);
    }
  }
  for (const SuggestedFingers& suggestion : part.suggestions) {
    take_suggestion(suggestion, notes[suggestion.note].note);
  }
  for (WrittenNote& note : notes) {
    if (!note.note.changes_to.empty()) drop_idle_changes(note.note);
  }
}

}  // namespace fingerturn
