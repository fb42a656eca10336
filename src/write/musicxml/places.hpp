#pragma once

#include "fingerturn/source.hpp"

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

/// Where a MusicXML text has room for marks, and which marks stand in it from an earlier run.
namespace fingerturn {

/// How our marks are known again: the name of the lyric line, and the language of the legend's
/// words, a private one as BCP 47 has them after "x". They stand in a credit, in scores that were
/// marked long ago in a direction.
inline constexpr std::string_view kLyricName = "fingerturn";
inline constexpr std::string_view kLegendLanguage = "en-x-forearm";

/// A place behind a tag where an element may be put in, after the same blanks as its neighbour's.
struct InsertionPlace {
  std::uint32_t at = 0;
  Span blanks;
};

/// A `<note>` of the text.
struct NoteInText {
  std::uint32_t begin = 0;  ///< where its tag begins
  std::uint32_t part = 0;   ///< its part, as the place in MusicXmlPlaces::parts
  std::int32_t staff = 1;
  /// The note under which the lyrics of its chord stand, the first one, as the place in
  /// MusicXmlPlaces::notes; a single note is its own.
  std::uint32_t carrier = 0;
  InsertionPlace notations;  ///< before its first lyric, or where that belongs
  InsertionPlace lyric;      ///< after its last lyric, or where its first one belongs
};

/// A `<fingering>` that is no alternative and none of our marks.
struct FingeringInText {
  std::uint32_t note = 0;  ///< its note, as the place in MusicXmlPlaces::notes
  Span span;
};

struct PartPlaces {
  std::int32_t highest_lyric = 0;  ///< the highest number of a lyric line that is not ours
};

struct MusicXmlPlaces {
  std::vector<NoteInText> notes;            ///< in the order of the text
  std::vector<PartPlaces> parts;            ///< in the order of the text
  std::vector<FingeringInText> fingerings;  ///< in the order of the text
  /// Where credits stand: before the list of parts or, where there is none, the first part.
  std::optional<InsertionPlace> legend;
  /// The marks of an earlier run with the blanks before them, in the order of the text.
  std::vector<Span> own_marks;
};

/// The places of a text; nothing where it cannot be XML. Time and memory grow in proportion to it.
std::optional<MusicXmlPlaces> find_places(std::string_view musicxml);

}  // namespace fingerturn
