#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

/// What the readers can have to say, in words: the word in brackets behind each of their messages.
///
///     if (const DiagnosticCode* code = find_diagnostic_code("finger-range")) say(code->cure);
namespace fingerturn {

/// After an error a source is not analysed; a warning lets it pass.
enum class Severity : std::uint8_t { error, warning };

/// One thing that can be wrong with a source. The texts live as long as the program.
struct DiagnosticCode {
  std::string_view id = {};  ///< a word that never changes its meaning, such as "finger-range"
  /// How severe it is in the passage notation and in MusicXML; none where it does not come up.
  std::optional<Severity> in_notation = {};
  std::optional<Severity> in_musicxml = {};
  std::string_view title = {};
  std::string_view meaning = {};  ///< what is wrong and what becomes of it, for a musician
  std::string_view cure = {};     ///< what to do about it
  std::string_view example = {};  ///< a passage in which it comes up; empty where none is short
  std::string_view outcome = {};  ///< how its messages end: what the reader did; may be empty
};

/// All codes, in the order of their ids.
std::span<const DiagnosticCode> diagnostic_codes() noexcept;

/// The code with this id; null where there is none.
const DiagnosticCode* find_diagnostic_code(std::string_view id) noexcept;

}  // namespace fingerturn
