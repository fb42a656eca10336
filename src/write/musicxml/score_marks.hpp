#pragma once

#include "fingerturn/analysed.hpp"
#include "write/musicxml/edit.hpp"
#include "write/musicxml/note_offsets.hpp"
#include "write/musicxml/places.hpp"
#include "write/shared/used.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace fingerturn {

/// A sign and the note that it stands under, as its place in MusicXmlPlaces::notes.
struct SignUnderNote {
  std::size_t note = 0;
  bool visiting = false;  ///< on the other hand's staff: its lyric stands one line lower
  std::string sign;
};

/// Collects what is to be put into a score.
class ScoreMarks {
 public:
  /// Without offsets the spans of the notes lead to their elements.
  ScoreMarks(std::string_view original, const MusicXmlPlaces& places, const NoteOffsets* offsets)
      : original_(original), places_(places), offsets_(offsets) {}

  /// How the forearm turns, under the notes and in the legend.
  void add_signs(const AnalysedPassage& passage, bool words);
  void add_suggestions(const AnalysedPassage& passage);

  /// All insertions in the order of the text.
  [[nodiscard]] std::vector<Insertion> insertions();

 private:
  [[nodiscard]] std::string_view text_of(Span span) const;
  [[nodiscard]] std::uint32_t offset_of(const Note& note) const;
  [[nodiscard]] const NoteInText* note_at(std::uint32_t begin) const;
  [[nodiscard]] std::optional<std::size_t> carrier_of(const Event& event) const;
  void add_line(const AnalysedLine& line);
  void add_mark(SignUnderNote mark, std::size_t roll, std::vector<SignUnderNote>& marks);
  [[nodiscard]] Insertion finger_of(const Note& note, const NoteInText& place) const;
  [[nodiscard]] std::int32_t commonest_staff(const std::vector<SignUnderNote>& marks) const;
  void keep_one_for_each_place();
  [[nodiscard]] Insertion lyric_of(const SignUnderNote& mark) const;
  [[nodiscard]] std::optional<Insertion> legend() const;

  std::string_view original_;
  const MusicXmlPlaces& places_;
  const NoteOffsets* offsets_;
  bool words_ = false;  ///< instead of arrows
  std::vector<SignUnderNote> marks_;
  std::vector<Insertion> fingers_;  ///< that are suggested
  Used used_;
  bool rolled_ = false;  ///< a lyric holds the signs of a rolled chord
  bool visits_ = false;  ///< a sign stands one line lower
};

}  // namespace fingerturn
