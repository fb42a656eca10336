#include "read/musicxml/note.hpp"

#include "read/musicxml/element.hpp"
#include "score/spelling.hpp"

#include <array>

namespace fingerturn {
namespace {

bool starts(pugi::xml_node tie) {
  return std::string_view(tie.attribute("type").value()) == "start";
}

void look_at_notations(pugi::xml_node notations, NoteElement& note) {
  for (const pugi::xml_node child : notations) {
    const std::string_view name = child.name();
    if (name == "technical") {
      note.has_fingering |= !child.child("fingering").empty();
    } else if (name == "tied") {
      note.tied |= starts(child);
    } else if (name == "articulations") {
      note.breath_after |= !child.child("breath-mark").empty() || !child.child("caesura").empty();
    }
  }
}

/// The first letter tells most names apart; scores have many elements that do not matter here.
void look_at(pugi::xml_node child, NoteElement& note) {
  const std::string_view name = child.name();
  switch (name.empty() ? ' ' : name.front()) {
    case 'p':
      if (name == "pitch") note.pitch = child;
      break;
    case 'd':
      if (name == "duration") note.duration = child;
      if (name == "dot") ++note.dots;
      break;
    case 'v':
      if (name == "voice") note.voice = child;
      break;
    case 's':
      if (name == "staff") note.staff = child;
      break;
    case 'n':
      if (name == "notations") look_at_notations(child, note);
      break;
    case 't':
      if (name == "tie") note.tied |= starts(child);
      if (name == "type") note.type = child;
      if (name == "time-modification") note.time_modification = child;
      break;
    case 'c':
      note.chord |= name == "chord";
      note.cue |= name == "cue";
      break;
    case 'g':
      note.grace |= name == "grace";
      break;
    case 'r':
      note.rest |= name == "rest";
      break;
    case 'u':
      note.unpitched |= name == "unpitched";
      break;
    default:
      break;
  }
}

std::optional<Step> step_in(std::string_view text) {
  const std::size_t step =
      text.size() == 1 ? kStepLetters.find(text.front()) : std::string_view::npos;
  if (step == std::string_view::npos) return std::nullopt;
  return static_cast<Step>(step);
}

/// A number such as "-1", "+1" or "1.0".
std::optional<int> alter_in(std::string_view text) {
  const std::size_t point = text.find('.');
  if (point != std::string_view::npos) {
    if (text.find_first_not_of('0', point + 1) != std::string_view::npos) return std::nullopt;
    text = text.substr(0, point);
  }
  return whole_number<int>(text);
}

}  // namespace

NoteElement note_element(pugi::xml_node element) {
  NoteElement note;
  note.element = element;
  for (const pugi::xml_node child : element) look_at(child, note);
  return note;
}

std::optional<Pitch> pitch_in(pugi::xml_node pitch) {
  constexpr int kMostAlter = 2;
  std::optional<Step> step;
  std::optional<int> alter = 0;
  std::optional<int> octave;
  for (const pugi::xml_node child : pitch) {
    const std::string_view name = child.name();
    if (name == "step") step = step_in(text_of(child));
    if (name == "alter") alter = alter_in(text_of(child));
    if (name == "octave") octave = whole_number<int>(text_of(child));
  }
  if (!step || !alter || !octave || *octave < 0 || *octave > 9) return std::nullopt;
  if (*alter < -kMostAlter || *alter > kMostAlter) return std::nullopt;
  const Pitch found{*step, static_cast<std::int8_t>(*alter), static_cast<std::int8_t>(*octave)};
  return on_the_piano(found) ? std::optional(found) : std::nullopt;
}

}  // namespace fingerturn
