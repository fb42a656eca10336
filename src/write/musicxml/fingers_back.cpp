#include "fingerturn/fingers_back.hpp"

#include "write/musicxml/edit.hpp"
#include "write/musicxml/fingerings.hpp"
#include "write/musicxml/places.hpp"

#include <algorithm>
#include <optional>
#include <utility>
#include <vector>

#include <fmt/core.h>

namespace fingerturn {
namespace {

bool same_fingers(const Note& one, const Note& other) {
  return one.suggested == other.suggested && written_fingers(one) == written_fingers(other);
}

class FingerEdits {
 public:
  FingerEdits(std::string_view original, const MusicXmlPlaces& places)
      : original_(original), places_(places) {}

  void add(const Line& before, const Line& after) {
    for (std::size_t at = 0; at < after.events.size(); ++at) {
      const std::vector<Note>& were = before.events[at].notes;
      const std::vector<Note>& are = after.events[at].notes;
      if (std::ranges::equal(were, are, same_fingers)) continue;
      for (std::size_t i = 0; i < are.size(); ++i) {
        // Fingers of a chord may have been stacked on one of its struck notes.
        const bool may_change = !are[i].held || !same_fingers(were[i], are[i]);
        if (may_change && !are[i].suggested) add(are[i]);
      }
    }
  }

  std::string text() {
    std::ranges::sort(removed_, {}, &Span::begin);
    removed_.erase(std::unique(removed_.begin(), removed_.end()), removed_.end());
    std::ranges::stable_sort(insertions_, {}, &Insertion::at);
    return edited(original_, removed_, insertions_);
  }

 private:
  void add(const Note& note) {
    const auto place =
        std::ranges::lower_bound(places_.notes, note.span.begin, {}, &NoteInText::begin);
    if (place == places_.notes.end() || place->begin != note.span.begin) return;
    const auto number = static_cast<std::uint32_t>(place - places_.notes.begin());
    const auto first =
        std::ranges::lower_bound(places_.fingerings, number, {}, &FingeringInText::note);
    const auto past =
        std::ranges::upper_bound(places_.fingerings, number, {}, &FingeringInText::note);
    for (auto fingering = first; fingering != past; ++fingering) {
      removed_.push_back(fingering->span);
    }
    std::string fingers = fingerings(note, "");
    if (fingers.empty()) return;
    if (first != past) {
      insertions_.push_back({first->span.begin, std::move(fingers)});
      return;
    }
    const Span blanks = place->notations.blanks;
    insertions_.push_back(
        {place->notations.at,
         fmt::format("{}<notations><technical>{}</technical></notations>",
                     original_.substr(blanks.begin, blanks.end - blanks.begin), fingers)});
  }

  std::string_view original_;
  const MusicXmlPlaces& places_;
  std::vector<Span> removed_;
  std::vector<Insertion> insertions_;
};

}  // namespace

std::string write_fingers(const Source& original, const Score& before, const Score& after) {
  const std::optional<MusicXmlPlaces> places = find_places(original.text());
  if (!places) return std::string(original.text());
  FingerEdits edits(original.text(), *places);
  for (std::size_t p = 0; p < after.passages.size(); ++p) {
    const std::vector<Line>& lines = after.passages[p].lines;
    for (std::size_t i = 0; i < lines.size(); ++i) edits.add(before.passages[p].lines[i], lines[i]);
  }
  return edits.text();
}

}  // namespace fingerturn
