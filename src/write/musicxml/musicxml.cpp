#include "fingerturn/report.hpp"
#include "write/musicxml/edit.hpp"
#include "write/musicxml/places.hpp"
#include "write/musicxml/score_marks.hpp"
#include "write/partwise/partwise.hpp"

#include <optional>
#include <string>
#include <string_view>

/// MusicXML with marks put in between its bytes: the user's own, of which nothing else is changed,
/// or a new score. Marks of an earlier run are taken out first.
namespace fingerturn {

std::string write_musicxml(const Source& original, const AnalysedScore& analysed,
                           const MusicXmlStyle& style) {
  const std::optional<MusicXmlPlaces> places = find_places(original.text());
  if (!places) return std::string(original.text());
  ScoreMarks marks(original.text(), *places, nullptr);
  for (const AnalysedPassage passage : analysed) {
    marks.add_signs(passage, style.words);
    marks.add_suggestions(passage);
  }
  return edited(original.text(), places->own_marks, marks.insertions());
}

std::string write_musicxml(const AnalysedScore& analysed, const MusicXmlStyle& style) {
  if (!musicxml_problem(analysed.written()).empty()) return {};
  const PartwiseScore score = partwise_score(analysed[0]);
  const std::optional<MusicXmlPlaces> places = find_places(score.text);
  if (!places) return score.text;
  ScoreMarks marks(score.text, *places, &score.offsets);
  if (style.signs) marks.add_signs(analysed[0], style.words);
  marks.add_suggestions(analysed[0]);
  return edited(score.text, {}, marks.insertions());
}

std::string write_musicxml(const Score& score) {
  return write_musicxml(AnalysedScore({}, score), {.signs = false});
}

std::string without_own_marks(std::string_view musicxml) {
  const std::optional<MusicXmlPlaces> places = find_places(musicxml);
  return places ? edited(musicxml, places->own_marks, {}) : std::string(musicxml);
}

}  // namespace fingerturn
