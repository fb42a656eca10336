#include "read/notation/key.hpp"

#include "score/keys.hpp"
#include "score/spelling.hpp"
#include "text/words.hpp"

#include <string>
#include <string_view>
#include <vector>

#include <fmt/core.h>

namespace fingerturn {
namespace {

constexpr const char* kKeyHint =
    "write the key, as in D major or B minor, or its signs, as in 2 sharps, 3 flats or none";

/// The words of a short text, in lower case; none of a long one, which is no key.
std::vector<std::string> words_of_key(std::string_view text) {
  constexpr std::size_t kLongestKey = 40;
  std::vector<std::string> words;
  if (text.size() > kLongestKey) return words;
  bool in_word = false;
  for (const char c : lower_case(text)) {
    const bool blank = c == ' ' || c == '\t';
    if (!blank && !in_word) words.emplace_back();
    if (!blank) words.back() += c;
    in_word = !blank;
  }
  return words;
}

std::optional<KeySignature> counted_signs(const std::vector<std::string>& words) {
  if (words.size() == 1 && words[0] == "none") return KeySignature{};
  if (words.size() != 2 || words[0].size() != 1) return std::nullopt;
  const int count = words[0].front() - '0';
  const bool sharps = words[1] == "sharps" || words[1] == "sharp";
  if (count < 0 || count > kMostSigns || (!sharps && words[1] != "flats" && words[1] != "flat")) {
    return std::nullopt;
  }
  return KeySignature{static_cast<std::int8_t>(sharps ? count : -count), Mode::unsaid};
}

/// A tonic with its mode, as in "Bb major".
struct NamedKey {
  Step step = Step::c;
  std::int8_t alter = 0;
  Mode mode = Mode::unsaid;
};

std::optional<NamedKey> named_key(const std::vector<std::string>& words) {
  if (words.size() != 2) return std::nullopt;
  const std::optional<Step> step = step_of_letter(words[0].front());
  const std::string_view sign = std::string_view(words[0]).substr(1);
  const AccidentalPrefix accidental = read_accidental(sign);
  const bool major = words[1] == "major";
  if (!step || accidental.bytes != sign.size() || (!major && words[1] != "minor")) {
    return std::nullopt;
  }
  return NamedKey{*step, accidental.alter, major ? Mode::major : Mode::minor};
}

/// The words of a key as others say it: "D", "Am", "D maj", "d-moll", "Es-Dur".
struct OtherKey {
  std::string tonic;
  std::string mode;  ///< empty where it is not said
};

OtherKey other_key(std::vector<std::string> words) {
  if (words.empty()) return {};
  std::string& first = words.front();
  if (const std::size_t hyphen = first.find('-');
      words.size() == 1 && hyphen != std::string::npos) {
    words = {first.substr(0, hyphen), first.substr(hyphen + 1)};
  } else if (words.size() == 1 && first.size() > 1 && first.back() == 'm') {
    words = {first.substr(0, first.size() - 1), "minor"};
  }
  std::string tonic = named_in_german(words[0]);
  if (tonic.empty()) tonic = words[0] == "h" ? "B" : words[0];
  if (tonic.empty() || !step_of_letter(tonic.front()) ||
      read_accidental(tonic.substr(1)).bytes != tonic.size() - 1) {
    return {};
  }
  if (words.size() == 1) return {tonic, {}};
  const std::string& mode = words[1];
  const bool major = mode == "major" || mode == "maj" || mode == "dur";
  const bool minor = mode == "minor" || mode == "min" || mode == "moll";
  if (words.size() > 2 || (!major && !minor)) return {};
  // In German B is what is Bb here.
  if ((mode == "dur" || mode == "moll") && words[0] == "b") tonic = "Bb";
  return {tonic, major ? "major" : "minor"};
}

/// What to write for a key that is not understood.
std::string cure_for_key(const std::vector<std::string>& words) {
  OtherKey meant = other_key(words);
  if (meant.tonic.empty()) return kKeyHint;
  meant.tonic.front() =
      kStepLetters[static_cast<std::size_t>(*step_of_letter(meant.tonic.front()))];
  if (meant.mode.empty()) return fmt::format("write {0} major or {0} minor", meant.tonic);
  return fmt::format("write {} {}", meant.tonic, meant.mode);
}

}  // namespace

std::optional<KeySignature> read_key(TextPiece value, Reporter& reporter) {
  const std::vector<std::string> words = words_of_key(value.text);
  if (const std::optional<KeySignature> key = counted_signs(words)) return key;
  const std::optional<NamedKey> named = named_key(words);
  if (named) {
    if (const auto key = key_of(named->step, named->alter, named->mode)) return key;
  }
  reporter.report(
      "key", value.span(),
      named
          ? fmt::format("expected a key of at most 7 sharps or flats, found {}", quoted(value.text))
          : fmt::format("expected a key, found {}", quoted(value.text)),
      named ? "write it under its other name, such as Ab major for G# major" : cure_for_key(words));
  return std::nullopt;
}

}  // namespace fingerturn
