#include "write/partwise/notations.hpp"

#include "write/musicxml/fingerings.hpp"

#include <string>
#include <vector>

namespace fingerturn {
namespace {

/// Notations, of which none may be written where there are none.
using Notations = std::vector<std::string>;

/// Whether one beam joins all of a tuplet, which then needs no bracket.
bool is_beamed(const NotatedVoice& voice, std::size_t first) {
  if (voice[first].beam != BeamPart::begins) return false;
  for (std::size_t i = first + 1; i < voice.size(); ++i) {
    if (voice[i].grace) continue;
    if (voice[i].tuplet == BeamPart::ends) return voice[i].beam == BeamPart::ends;
    if (voice[i].beam != BeamPart::inside) return false;
  }
  return false;
}

void add_tuplet(const ChordPlace& place, Notations& notations) {
  if (place.of().tuplet == BeamPart::begins) {
    notations.push_back(fmt::format(R"(<tuplet type="start" bracket="{}"/>)",
                                    is_beamed(place.voice, place.chord) ? "no" : "yes"));
  }
  if (place.of().tuplet == BeamPart::ends) notations.emplace_back("<tuplet type=\"stop\"/>");
}

void add_ornament(Ornament ornament, Notations& notations) {
  if (ornament == Ornament::trill) notations.emplace_back("<ornaments><trill-mark/></ornaments>");
  if (ornament == Ornament::tremolo) {
    notations.emplace_back("<ornaments><tremolo type=\"single\">3</tremolo></ornaments>");
  }
}

void add_of_chord(const ChordPlace& place, Notations& notations) {
  add_tuplet(place, notations);
  add_ornament(place.of().ornament, notations);
  if (place.of().breath_after) {
    notations.emplace_back("<articulations><breath-mark/></articulations>");
  }
}

bool begins_roll(const Line& line, std::size_t event) {
  return line.events[event].rolls_on && (event == 0 || !line.events[event - 1].rolls_on);
}

/// Whether a roll goes down, by an event of it and its neighbour there.
bool rolls_down(const Line& line, std::size_t event) {
  const std::size_t first = line.events[event].rolls_on ? event : event - 1;
  if (first + 1 == line.events.size()) return false;
  return midi_number(line.events[first].notes.back().pitch) >
         midi_number(line.events[first + 1].notes.back().pitch);
}

/// Each note of a roll has the sign. Of what its first event strikes together only the last has it:
/// the others then are struck with the first note of the roll.
void add_roll(const ChordPlace& place, const NotatedHead& head, Notations& notations) {
  const Line& line = *place.line;
  const std::size_t at = head.place.event;
  const Event& event = line.events[at];
  if (!place.is_stroke || !place.of().rolled || event.notes[head.place.note].held) return;
  if (begins_roll(line, at) && head.place.note + 1 < event.notes.size()) return;
  if (!event.rolls_on && (at == 0 || !line.events[at - 1].rolls_on)) return;
  notations.emplace_back(rolls_down(line, at) ? "<arpeggiate direction=\"down\"/>"
                                              : "<arpeggiate/>");
}

/// Suggested fingers are put in as marks are.
void add_fingers(const ChordPlace& place, const NotatedHead& head, Notations& notations) {
  const Note& note = place.line->events[head.place.event].notes[head.place.note];
  if (!place.is_stroke || note.suggested) return;
  const std::string fingers = fingerings(note, "") + alternatives(note);
  if (!fingers.empty()) notations.push_back("<technical>" + fingers + "</technical>");
}

}  // namespace

void add_notations(const ChordPlace& place, XmlText& xml) {
  Notations notations;
  if (place.head) {
    const NotatedHead& head = place.of().heads[*place.head];
    if (head.tied_to) notations.emplace_back("<tied type=\"stop\"/>");
    if (head.tied_on) notations.emplace_back("<tied type=\"start\"/>");
  }
  if (place.head.value_or(0) == 0) add_of_chord(place, notations);
  if (place.head) {
    add_fingers(place, place.of().heads[*place.head], notations);
    if (!place.of().grace) add_roll(place, place.of().heads[*place.head], notations);
  }
  if (notations.empty()) return;
  xml.open("notations");
  for (const std::string& each : notations) xml.add_line(each);
  xml.close();
}

}  // namespace fingerturn
