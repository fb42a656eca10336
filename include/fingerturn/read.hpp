#pragma once

#include "fingerturn/diagnostic.hpp"
#include "fingerturn/score.hpp"
#include "fingerturn/source.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>

namespace fingerturn {

/// A score and all that was wrong with its source. What could be read is in the score even after
/// an error, but only a source without errors should be analysed.
struct ReadResult {
  Score score;
  Diagnostics diagnostics;
  /// The text that the spans point into, where that is not the source itself: what was packed in
  /// an .mxl container or written in another encoding, as UTF-8.
  std::optional<Source> unpacked;

  [[nodiscard]] bool ok() const noexcept { return diagnostics.errors == 0; }
};

/// The text that the spans of a result point into: `source`, or what was unpacked from it.
const Source& text_read(const ReadResult& result, const Source& source) noexcept;

/// The forms in which music comes in.
enum class SourceForm : std::uint8_t { notation, musicxml, packed_musicxml };

/// Tells the form by what the source holds and, where that does not tell, by its name (.musicxml,
/// .xml, .mxl; all else is notation).
SourceForm form_of(const Source& source) noexcept;

/// The largest sources the readers take, in bytes; a larger one is an error ("too-large"). What is
/// packed may unpack to the same size.
inline constexpr std::size_t kLargestNotation = std::size_t{16} * 1024 * 1024;
inline constexpr std::size_t kLargestMusicXml = std::size_t{128} * 1024 * 1024;
/// The most keyboards, each of one part or two, that a score may be for; more are an error
/// ("too-large"), since each becomes a passage with names and remarks of its own.
inline constexpr std::size_t kMostKeyboards = 999;

/// The most memory that reading holds, its result included, for each byte that it reads (of what is
/// packed, for each byte that it unpacks to), beside 16 MiB for the names of keyboards. So much it
/// takes only for the smallest elements without music and for the shortest notes: real scores take
/// some ten bytes for a byte, typed passages some sixty.
inline constexpr std::size_t kMemoryForByteOfMusicXml = 32;
inline constexpr std::size_t kMemoryForByteOfNotation = 256;

/// What a score leaves open and its user decides.
struct ReadOptions {
  /// The hand of a part with one staff; none: by its clef.
  std::optional<Hand> hand = std::nullopt;
  /// The number of the part to read, from 1; none: those for keyboard.
  std::optional<int> part = std::nullopt;
};

/// Reads a source of any form. Any bytes may come in: nothing but std::bad_alloc is thrown, and
/// time and memory grow in proportion to the source.
///
///     const Source source("etude.musicxml", bytes);
///     const ReadResult result = read(source);
///     if (!result.ok()) std::cerr << render(text_read(result, source), result.diagnostics);
ReadResult read(const Source& source, const ReadOptions& options = {});

/// Reads the passage notation (docs/notation.md).
///
///     ReadResult result = read_notation(Source("warmup.passage", "C4:1 D:2 E:3"));
ReadResult read_notation(const Source& source);

/// Reads MusicXML (W3C Community Group, version 4.0 and earlier), partwise or timewise, as text in
/// UTF-8, UTF-16, ISO-8859-1, ISO-8859-15 or windows-1252 or packed in an .mxl container. Each
/// keyboard instrument becomes a passage; its remarks say how parts and staves became hands. The
/// span of a note is the beginning of its element, "<note".
///
///     ReadResult result = read_musicxml(source, {.hand = Hand::left});
ReadResult read_musicxml(const Source& source, const ReadOptions& options = {});

/// How a suggested finger is known in MusicXML, read and written: its `<notations>` say so in their
/// `<level>`, the element in which the standard states the editorial standing of what encloses it.
inline constexpr std::string_view kSuggestionLevel = "suggested by fingerturn";
/// What follows it where a suggestion stands for a written finger: " in place of 5".
inline constexpr std::string_view kInPlaceOf = " in place of ";
/// The same of what somebody wrote above a bar (Passage::notes): the language of the `<words>`, a
/// private one as BCP 47 has them.
inline constexpr std::string_view kNoteLanguage = "x-note";

}  // namespace fingerturn
