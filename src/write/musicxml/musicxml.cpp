#include "fingerturn/read.hpp"
#include "fingerturn/report.hpp"
#include "text/escape.hpp"
#include "write/musicxml/places.hpp"
#include "write/musicxml/signs.hpp"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <tuple>
#include <utility>
#include <vector>

#include <fmt/core.h>

/// The user's own MusicXML with marks put in between its bytes. Nothing else is changed, and marks
/// of an earlier run are taken out first.
namespace fingerturn {
namespace {

/// Lines of text between two tags; the line feeds between them are kept from being blank space.
std::string markup_of_lines(std::string_view text) {
  std::string markup;
  for (std::size_t end = text.find('\n'); end != std::string_view::npos; end = text.find('\n')) {
    markup += escaped_markup(text.substr(0, end)) + "&#10;";
    text.remove_prefix(end + 1);
  }
  return markup + escaped_markup(text);
}

/// A sign and the note that it stands under, as its place in MusicXmlPlaces::notes.
struct Mark {
  std::size_t note = 0;
  bool visiting = false;  ///< on the other hand's staff: its lyric stands one line lower
  std::string sign;
};

/// A text to be put in.
struct Insertion {
  std::uint32_t at = 0;
  std::string text;
};

/// The text with the insertions, which are in its order, and without the marks of an earlier run.
std::string edited(std::string_view original, const std::vector<Span>& own_marks,
                   const std::vector<Insertion>& insertions) {
  std::string out;
  std::size_t done = 0;
  auto insertion = insertions.begin();
  const auto copy_up_to = [&](std::size_t place) {
    for (; insertion != insertions.end() && insertion->at <= place; ++insertion) {
      out += original.substr(done, insertion->at - done);
      out += insertion->text;
      done = insertion->at;
    }
    out += original.substr(done, place - done);
  };
  for (const Span mark : own_marks) {
    copy_up_to(mark.begin);
    done = mark.end;
  }
  copy_up_to(original.size());
  return out;
}

/// Collects what is to be put into a score.
class ScoreMarks {
 public:
  ScoreMarks(std::string_view original, const MusicXmlPlaces& places, MusicXmlStyle style)
      : original_(original), places_(places), style_(style) {}

  void add_passage(const AnalysedPassage& passage) {
    for (const AnalysedLine line : passage) {
      add_line(line);
      add_suggestions(line.written());
    }
  }

  /// All insertions in the order of the text.
  std::vector<Insertion> insertions() {
    keep_one_for_each_place();
    // Of one place the fingers come first: lyrics follow notations.
    std::vector<Insertion> all = fingers_;
    for (const Mark& mark : marks_) all.push_back(lyric_of(mark));
    if (const std::optional<Insertion> legend = this->legend()) all.push_back(*legend);
    std::stable_sort(all.begin(), all.end(), [](const Insertion& left, const Insertion& right) {
      return left.at < right.at;
    });
    return all;
  }

 private:
  [[nodiscard]] std::string_view text_of(Span span) const {
    return original_.substr(span.begin, span.end - span.begin);
  }

  /// The note element that a span of the score begins at.
  [[nodiscard]] const NoteInText* note_at(std::uint32_t begin) const {
    const auto found = std::lower_bound(
        places_.notes.begin(), places_.notes.end(), begin,
        [](const NoteInText& note, std::uint32_t offset) { return note.begin < offset; });
    return found != places_.notes.end() && found->begin == begin ? &*found : nullptr;
  }

  /// The note under which an event's sign stands: the first that is struck, or the first of its
  /// chord.
  [[nodiscard]] std::optional<std::size_t> carrier_of(const Event& event) const {
    const Note* first = nullptr;
    for (const Note& note : event.notes) {
      if (!note.held && (first == nullptr || note.span.begin < first->span.begin)) first = &note;
    }
    const NoteInText* const place = first == nullptr ? nullptr : note_at(first->span.begin);
    return place == nullptr ? std::nullopt : std::optional<std::size_t>(place->carrier);
  }

  void add_line(const AnalysedLine& line) {
    std::vector<Mark> marks;
    std::size_t roll = 0;  // where the marks of the rolled chord at hand begin
    bool rolls_on = false;
    for (const auto& [written, found] : line) {
      if (!rolls_on) roll = marks.size();
      rolls_on = written.rolls_on;
      const std::optional<std::size_t> note = carrier_of(written);
      if (!note) continue;
      add_mark({*note, false, score_sign(found, line.hand(), style_.words)}, roll, marks);
      used_.see(found);
    }
    const std::int32_t home = commonest_staff(marks);
    for (Mark& mark : marks) {
      mark.visiting = places_.notes[mark.note].staff != home;
      visits_ |= mark.visiting;
    }
    marks_.insert(marks_.end(), marks.begin(), marks.end());
  }

  /// The notes of a rolled chord that stand under one note have one lyric, with their signs in the
  /// order in which they are rolled.
  void add_mark(Mark mark, std::size_t roll, std::vector<Mark>& marks) {
    const auto before = std::find_if(marks.begin() + static_cast<std::ptrdiff_t>(roll), marks.end(),
                                     [&](const Mark& other) { return other.note == mark.note; });
    if (before == marks.end()) return marks.push_back(std::move(mark));
    before->sign += '/' + mark.sign;
    rolled_ = true;
  }

  void add_suggestions(const Line& line) {
    for (const Event& event : line.events) {
      for (const Note& note : event.notes) {
        const NoteInText* const place = note.suggested ? note_at(note.span.begin) : nullptr;
        if (place != nullptr) fingers_.push_back(finger_of(note, *place));
      }
    }
  }

  [[nodiscard]] Insertion finger_of(const Note& note, const NoteInText& place) const {
    std::string fingers;
    for (const Finger finger : written_fingers(note)) {
      fingers += fmt::format("<fingering{} font-style=\"italic\">{}</fingering>",
                             fingers.empty() ? "" : " substitution=\"yes\"", finger);
    }
    return {place.notations.at,
            fmt::format("{}<notations><level>{}</level><technical>{}</technical></notations>",
                        text_of(place.notations.blanks), kSuggestionLevel, fingers)};
  }

  /// The staff under which a hand has most signs.
  [[nodiscard]] std::int32_t commonest_staff(const std::vector<Mark>& marks) const {
    std::map<std::int32_t, std::size_t> signs;
    for (const Mark& mark : marks) ++signs[places_.notes[mark.note].staff];
    const auto most = std::max_element(
        signs.begin(), signs.end(),
        [](const auto& left, const auto& right) { return left.second < right.second; });
    return most == signs.end() ? 1 : most->first;
  }

  /// Two hands that share a chord, or a note: the sign of the first one stays.
  void keep_one_for_each_place() {
    const auto place = [](const Mark& mark) { return std::tie(mark.note, mark.visiting); };
    std::stable_sort(marks_.begin(), marks_.end(), [&](const Mark& left, const Mark& right) {
      return place(left) < place(right);
    });
    const auto end = std::unique(
        marks_.begin(), marks_.end(),
        [&](const Mark& left, const Mark& right) { return place(left) == place(right); });
    marks_.erase(end, marks_.end());
  }

  [[nodiscard]] Insertion lyric_of(const Mark& mark) const {
    const NoteInText& note = places_.notes[mark.note];
    const std::int32_t number = places_.parts[note.part].highest_lyric + (mark.visiting ? 2 : 1);
    return {note.lyric.at,
            fmt::format("{}<lyric number=\"{}\" name=\"{}\" placement=\"below\">"
                        "<syllabic>single</syllabic><text>{}</text></lyric>",
                        text_of(note.lyric.blanks), number, kLyricName, escaped_markup(mark.sign))};
  }

  /// The legend stands once, in the part of the first sign.
  [[nodiscard]] std::optional<Insertion> legend() const {
    if (marks_.empty()) return std::nullopt;
    const auto& place = places_.parts[places_.notes[marks_.front().note].part].legend;
    if (!place) return std::nullopt;
    std::string text = score_legend(used_, {rolled_, visits_}, style_.words);
    text.pop_back();
    return Insertion{place->at,
                     fmt::format("{}<direction placement=\"above\"><direction-type>"
                                 "<words xml:lang=\"{}\" font-size=\"8\">{}</words>"
                                 "</direction-type></direction>",
                                 text_of(place->blanks), kLegendLanguage, markup_of_lines(text))};
  }

  std::string_view original_;
  const MusicXmlPlaces& places_;
  MusicXmlStyle style_;
  std::vector<Mark> marks_;
  std::vector<Insertion> fingers_;  ///< that are suggested
  Used used_;
  bool rolled_ = false;  ///< a lyric holds the signs of a rolled chord
  bool visits_ = false;  ///< a sign stands one line lower
};

}  // namespace

std::string write_musicxml(const Source& original, const AnalysedScore& analysed,
                           const MusicXmlStyle& style) {
  const std::optional<MusicXmlPlaces> places = find_places(original.text());
  if (!places) return std::string(original.text());
  ScoreMarks marks(original.text(), *places, style);
  for (const AnalysedPassage passage : analysed) marks.add_passage(passage);
  return edited(original.text(), places->own_marks, marks.insertions());
}

std::string without_own_marks(std::string_view musicxml) {
  const std::optional<MusicXmlPlaces> places = find_places(musicxml);
  return places ? edited(musicxml, places->own_marks, {}) : std::string(musicxml);
}

}  // namespace fingerturn
