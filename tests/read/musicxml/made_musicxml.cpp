#include "read/musicxml/made_musicxml.hpp"

#include <map>
#include <numeric>

#include <fmt/format.h>

namespace fingerturn::tests {
namespace {

std::int64_t divisions_for(const Passage& passage) {
  std::int64_t common = 4;
  for (const Line& line : passage.lines) {
    for (const Event& event : line.events) common = std::lcm(common, event.duration->denominator);
  }
  return common / 4;
}

class MusicXmlMaker {
 public:
  explicit MusicXmlMaker(const Passage& passage)
      : passage_(passage), divisions_(divisions_for(passage)) {}

  std::string make() {
    std::map<std::int32_t, bool> bars;
    for (const Line& line : passage_.lines) {
      for (const Event& event : line.events) bars[event.bar] = true;
    }
    std::string text =
        "<score-partwise><part-list><score-part id=\"P1\"><part-name>Piano</part-name>"
        "</score-part></part-list><part id=\"P1\">\n";
    bool first = true;
    for (const auto& [bar, unused] : bars) {
      text += fmt::format("<measure number=\"{}\">", bar);
      if (first) {
        text += fmt::format("<attributes><divisions>{}</divisions><staves>2</staves></attributes>",
                            divisions_);
      }
      first = false;
      for (const Line& line : passage_.lines) text += bar_text(line, bar);
      text += "</measure>\n";
    }
    return text + "</part></score-partwise>\n";
  }

 private:
  std::int64_t ticks_of(Fraction value) const {
    return value.numerator * 4 * divisions_ / value.denominator;
  }

  /// The bar of a hand, and back to its beginning.
  std::string bar_text(const Line& line, std::int32_t bar) const {
    std::string text;
    std::int64_t length = 0;
    for (const Event& event : line.events) {
      if (event.bar != bar) continue;
      text += event_text(event, line.hand);
      length += ticks_of(*event.duration);
    }
    return text + fmt::format("<backup><duration>{}</duration></backup>", length);
  }

  std::string event_text(const Event& event, Hand hand) const {
    const std::string time =
        event.grace ? "" : fmt::format("<duration>{}</duration>", ticks_of(*event.duration));
    const std::string place =
        fmt::format("<voice>{0}</voice><staff>{0}</staff>", hand == Hand::right ? 1 : 2);
    if (event.is_rest()) return "<note><rest/>" + time + place + "</note>";
    std::string text;
    for (const Note& note : event.notes) {
      text += event.grace ? "<note><grace/>" : "<note>";
      if (&note != &event.notes.front()) text += "<chord/>";
      text += pitch_text(note.pitch) + time;
      if (note.held) text += "<tie type=\"stop\"/>";
      if (note.tied) text += "<tie type=\"start\"/>";
      text += place + "<notations>" + fingers_text(note);
      if (event.breath_after) text += "<articulations><breath-mark/></articulations>";
      text += "</notations></note>";
    }
    return text;
  }

  static std::string pitch_text(Pitch pitch) {
    return fmt::format("<pitch><step>{}</step><alter>{}</alter><octave>{}</octave></pitch>",
                       std::string_view("CDEFGAB")[static_cast<std::size_t>(pitch.step)],
                       int{pitch.alter}, int{pitch.octave});
  }

  static std::string fingers_text(const Note& note) {
    std::string text;
    for (const Finger finger : written_fingers(note)) {
      const std::string_view attribute = text.empty() ? "" : " substitution=\"yes\"";
      text += fmt::format("<fingering{}>{}</fingering>", attribute, finger);
    }
    return text.empty() ? text : "<technical>" + text + "</technical>";
  }

  const Passage& passage_;
  std::int64_t divisions_;
};

}  // namespace

std::string musicxml_of(const Passage& passage) { return MusicXmlMaker(passage).make(); }

}  // namespace fingerturn::tests
