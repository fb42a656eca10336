#include "read/musicxml/note.hpp"

#include "read/musicxml/element.hpp"
#include "score/spelling.hpp"

#include <array>

namespace fingerturn {
namespace {

bool starts(pugi::xml_node tie) {
  return std::string_view(tie.attribute("type").value()) == "start";
}

/// Whether a line or a sign that has a beginning and an end only ends here.
bool stops(pugi::xml_node element) {
  return std::string_view(element.attribute("type").value()) == "stop";
}

struct OrnamentName {
  std::string_view element;
  std::string_view name;
};

/// MusicXML 4.0, ornaments: those of which only the note they stand on is read.
constexpr std::array<OrnamentName, 12> kLeftOut{{{"mordent", "mordent"},
                                                 {"inverted-mordent", "mordent"},
                                                 {"turn", "turn"},
                                                 {"inverted-turn", "turn"},
                                                 {"delayed-turn", "turn"},
                                                 {"delayed-inverted-turn", "turn"},
                                                 {"vertical-turn", "turn"},
                                                 {"inverted-vertical-turn", "turn"},
                                                 {"shake", "shake"},
                                                 {"schleifer", "slide"},
                                                 {"haydn", "turn"},
                                                 {"other-ornament", "other ornament"}}};

void look_at_ornaments(pugi::xml_node ornaments, NoteElement& note) {
  for (const pugi::xml_node child : ornaments) {
    const std::string_view name = child.name();
    if (name == "trill-mark" || (name == "wavy-line" && !stops(child))) {
      note.ornament = Ornament::trill;
    } else if (name == "tremolo" && note.ornament == Ornament::none) {
      note.ornament = Ornament::tremolo;
    }
    for (const OrnamentName& known : kLeftOut) {
      if (known.element == name) note.ornament_left_out = known.name;
    }
  }
}

void look_at_slur(pugi::xml_node slur, NoteElement& note) {
  constexpr std::uint8_t kMostSlurs = 99;
  std::uint8_t& count = stops(slur) ? note.slurs_end : note.slurs_begin;
  if ((stops(slur) || starts(slur)) && count < kMostSlurs) ++count;
}

void look_at_beam(pugi::xml_node beam, NoteElement& note) {
  const std::string_view number = beam.attribute("number").value();
  if (!number.empty() && number != "1") return;
  const std::string_view text = text_of(beam);
  if (text == "begin") note.beam = Beam::begins;
  if (text == "continue") note.beam = Beam::inside;
  if (text == "end") note.beam = Beam::ends;
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
    } else if (name == "ornaments") {
      look_at_ornaments(child, note);
    } else if (name == "slur") {
      look_at_slur(child, note);
    } else if (name == "fermata") {
      note.fermata = true;
    } else if (name == "dynamics") {
      note.dynamics = child;
    } else if (name == "arpeggiate") {
      note.rolled = true;
      note.rolls_down |= std::string_view(child.attribute("direction").value()) == "down";
    }
  }
}

/// What says how long a note is.
void look_at_length(pugi::xml_node child, NoteElement& note) {
  const std::string_view name = child.name();
  if (name == "duration") note.duration = child;
  if (name == "dot") ++note.dots;
  if (name == "type") note.type = child;
  if (name == "time-modification") note.time_modification = child;
}

/// The first letter tells most names apart; scores have many elements that do not matter here.
void look_at(pugi::xml_node child, NoteElement& note) {
  const std::string_view name = child.name();
  switch (name.empty() ? ' ' : name.front()) {
    case 'p':
      if (name == "pitch") note.pitch = child;
      break;
    case 'd':
      look_at_length(child, note);
      break;
    case 'b':
      if (name == "beam") look_at_beam(child, note);
      break;
    case 'l':
      note.has_lyric |= name == "lyric";
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
      look_at_length(child, note);
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
