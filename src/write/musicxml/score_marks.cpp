#include "write/musicxml/score_marks.hpp"

#include "fingerturn/read.hpp"
#include "text/escape.hpp"
#include "write/musicxml/fingerings.hpp"
#include "write/musicxml/legend.hpp"
#include "write/musicxml/signs.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <tuple>
#include <utility>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// Of a note that is not in the text.
constexpr std::uint32_t kInNoText = std::numeric_limits<std::uint32_t>::max();

}  // namespace

void ScoreMarks::add_signs(const AnalysedPassage& passage, bool words) {
  words_ = words;
  for (const AnalysedLine line : passage) add_line(line);
}

std::vector<Insertion> ScoreMarks::insertions() {
  keep_one_for_each_place();
  // Of one place the fingers come first: lyrics follow notations.
  std::vector<Insertion> all = fingers_;
  for (const SignUnderNote& mark : marks_) all.push_back(lyric_of(mark));
  if (const std::optional<Insertion> legend = this->legend()) all.push_back(*legend);
  std::stable_sort(all.begin(), all.end(), [](const Insertion& left, const Insertion& right) {
    return left.at < right.at;
  });
  return all;
}

std::uint32_t ScoreMarks::offset_of(const Note& note) const {
  if (offsets_ == nullptr) return note.span.begin;
  const auto found = offsets_->find(&note);
  return found == offsets_->end() ? kInNoText : found->second;
}

std::string_view ScoreMarks::text_of(Span span) const {
  return original_.substr(span.begin, span.end - span.begin);
}

/// The note element that a span of the score begins at.
const NoteInText* ScoreMarks::note_at(std::uint32_t begin) const {
  const auto found = std::lower_bound(
      places_.notes.begin(), places_.notes.end(), begin,
      [](const NoteInText& note, std::uint32_t offset) { return note.begin < offset; });
  return found != places_.notes.end() && found->begin == begin ? &*found : nullptr;
}

/// The note under which an event's sign stands: the first that is struck, or the first of its
/// chord.
std::optional<std::size_t> ScoreMarks::carrier_of(const Event& event) const {
  std::optional<std::uint32_t> first;
  for (const Note& note : event.notes) {
    if (!note.held) first = std::min(first.value_or(offset_of(note)), offset_of(note));
  }
  const NoteInText* const place = first ? note_at(*first) : nullptr;
  return place == nullptr ? std::nullopt : std::optional<std::size_t>(place->carrier);
}

void ScoreMarks::add_line(const AnalysedLine& line) {
  std::vector<SignUnderNote> marks;
  std::size_t roll = 0;  // where the marks of the rolled chord at hand begin
  bool rolls_on = false;
  for (const auto& [written, found] : line) {
    if (!rolls_on) roll = marks.size();
    rolls_on = written.rolls_on;
    const std::optional<std::size_t> note = carrier_of(written);
    if (!note) continue;
    add_mark({*note, false, score_sign(found, line.hand(), words_)}, roll, marks);
    used_.see(found);
  }
  const std::int32_t home = commonest_staff(marks);
  for (SignUnderNote& mark : marks) {
    mark.visiting = places_.notes[mark.note].staff != home;
    visits_ |= mark.visiting;
  }
  marks_.insert(marks_.end(), marks.begin(), marks.end());
}

/// The notes of a rolled chord that stand under one note have one lyric, with their signs in the
/// order in which they are rolled.
void ScoreMarks::add_mark(SignUnderNote mark, std::size_t roll, std::vector<SignUnderNote>& marks) {
  const auto before =
      std::find_if(marks.begin() + static_cast<std::ptrdiff_t>(roll), marks.end(),
                   [&](const SignUnderNote& other) { return other.note == mark.note; });
  if (before == marks.end()) return marks.push_back(std::move(mark));
  before->sign += '/' + mark.sign;
  rolled_ = true;
}

void ScoreMarks::add_suggestions(const AnalysedPassage& passage) {
  for (const Line& line : passage.written().lines) {
    for (const Event& event : line.events) {
      if (!passage.found().shows(event.bar)) continue;
      for (const Note& note : event.notes) {
        const NoteInText* const place = note.suggested ? note_at(offset_of(note)) : nullptr;
        if (place != nullptr) fingers_.push_back(finger_of(note, *place));
      }
    }
  }
}

Insertion ScoreMarks::finger_of(const Note& note, const NoteInText& place) const {
  const std::string instead =
      note.set_aside ? fmt::format("{}{}", kInPlaceOf, *note.set_aside) : std::string();
  return {place.notations.at,
          fmt::format("{}<notations><level>{}{}</level><technical>{}</technical></notations>",
                      text_of(place.notations.blanks), kSuggestionLevel, instead,
                      fingerings(note, " font-style=\"italic\""))};
}

/// The staff under which a hand has most signs.
std::int32_t ScoreMarks::commonest_staff(const std::vector<SignUnderNote>& marks) const {
  std::map<std::int32_t, std::size_t> signs;
  for (const SignUnderNote& mark : marks) ++signs[places_.notes[mark.note].staff];
  const auto most = std::max_element(
      signs.begin(), signs.end(),
      [](const auto& left, const auto& right) { return left.second < right.second; });
  return most == signs.end() ? 1 : most->first;
}

/// Two hands that share a chord, or a note: the sign of the first one stays.
void ScoreMarks::keep_one_for_each_place() {
  const auto place = [](const SignUnderNote& mark) { return std::tie(mark.note, mark.visiting); };
  std::stable_sort(marks_.begin(), marks_.end(),
                   [&](const SignUnderNote& left, const SignUnderNote& right) {
                     return place(left) < place(right);
                   });
  const auto end = std::unique(marks_.begin(), marks_.end(),
                               [&](const SignUnderNote& left, const SignUnderNote& right) {
                                 return place(left) == place(right);
                               });
  marks_.erase(end, marks_.end());
}

Insertion ScoreMarks::lyric_of(const SignUnderNote& mark) const {
  const NoteInText& note = places_.notes[mark.note];
  const std::int32_t number = places_.parts[note.part].highest_lyric + (mark.visiting ? 2 : 1);
  return {note.lyric.at,
          fmt::format("{}<lyric number=\"{}\" name=\"{}\" placement=\"below\">"
                      "<syllabic>single</syllabic><text>{}</text></lyric>",
                      text_of(note.lyric.blanks), number, kLyricName, escaped_markup(mark.sign))};
}

std::optional<Insertion> ScoreMarks::legend() const {
  const std::optional<InsertionPlace>& place = places_.legend;
  if (marks_.empty() || !place) return std::nullopt;
  const std::string text = score_legend(used_, {rolled_, visits_}, words_);
  return Insertion{place->at, std::string(text_of(place->blanks)) + legend_credit(text)};
}

}  // namespace fingerturn
