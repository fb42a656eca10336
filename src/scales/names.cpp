#include "scales/names.hpp"

#include "score/line_of_fifths.hpp"
#include "score/spelling.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <span>

#include <fmt/format.h>

namespace fingerturn {
namespace {

/// Longer texts are not read: no name comes near.
constexpr std::size_t kLongestName = 60;

/// How a kind is said, in words with one blank between them.
struct Phrase {
  std::string_view words;
  ScaleKind kind;
};

constexpr std::array<Phrase, 24> kPhrases{{
    {"major", ScaleKind::major},
    {"major scale", ScaleKind::major},
    {"minor", ScaleKind::natural_minor},
    {"minor scale", ScaleKind::natural_minor},
    {"natural minor", ScaleKind::natural_minor},
    {"natural minor scale", ScaleKind::natural_minor},
    {"harmonic minor", ScaleKind::harmonic_minor},
    {"harmonic minor scale", ScaleKind::harmonic_minor},
    {"melodic minor", ScaleKind::melodic_minor},
    {"melodic minor scale", ScaleKind::melodic_minor},
    {"minor natural", ScaleKind::natural_minor},
    {"minor natural scale", ScaleKind::natural_minor},
    {"minor harmonic", ScaleKind::harmonic_minor},
    {"minor harmonic scale", ScaleKind::harmonic_minor},
    {"minor melodic", ScaleKind::melodic_minor},
    {"minor melodic scale", ScaleKind::melodic_minor},
    {"chromatic", ScaleKind::chromatic},
    {"chromatic scale", ScaleKind::chromatic},
    {"major arpeggio", ScaleKind::major_arpeggio},
    {"minor arpeggio", ScaleKind::minor_arpeggio},
    {"dominant seventh", ScaleKind::dominant_seventh},
    {"dominant seventh arpeggio", ScaleKind::dominant_seventh},
    {"diminished seventh", ScaleKind::diminished_seventh},
    {"diminished seventh arpeggio", ScaleKind::diminished_seventh},
}};

/// What says too little to be taken, and what is most likely meant.
constexpr std::array<Phrase, 9> kIncomplete{{
    {"", ScaleKind::major},
    {"scale", ScaleKind::major},
    {"harmonic", ScaleKind::harmonic_minor},
    {"melodic", ScaleKind::melodic_minor},
    {"arpeggio", ScaleKind::major_arpeggio},
    {"seventh", ScaleKind::dominant_seventh},
    {"seventh arpeggio", ScaleKind::dominant_seventh},
    {"diminished", ScaleKind::diminished_seventh},
    {"diminished arpeggio", ScaleKind::diminished_seventh},
}};

/// Shorter or other words for the same.
struct Synonym {
  std::string_view typed;
  std::string_view meant;
};

constexpr std::array<Synonym, 13> kSynonyms{{{"7", "seventh"},
                                             {"7th", "seventh"},
                                             {"arpeggios", "arpeggio"},
                                             {"dim", "diminished"},
                                             {"dim7", "diminished seventh"},
                                             {"dom", "dominant"},
                                             {"dur", "major"},
                                             {"harmonisch", "harmonic"},
                                             {"m", "minor"},
                                             {"maj", "major"},
                                             {"melodisch", "melodic"},
                                             {"min", "minor"},
                                             {"moll", "minor"}}};

using Words = std::vector<std::string>;

Words words_of(std::string_view text) {
  constexpr std::string_view kBetween = " \t\r\n-_,;/+&";
  const std::string lower = lower_case(text);
  Words words;
  for (std::size_t begin = lower.find_first_not_of(kBetween); begin != std::string::npos;) {
    const std::size_t end = std::min(lower.find_first_of(kBetween, begin), lower.size());
    words.push_back(lower.substr(begin, end - begin));
    begin = lower.find_first_not_of(kBetween, end);
  }
  return words;
}

std::string joined(const Words& words) { return fmt::format("{}", fmt::join(words, " ")); }

std::optional<int> alter_of_word(std::string_view word) {
  if (word == "flat") return -1;
  if (word == "sharp") return 1;
  return std::nullopt;
}

/// What the text after a letter says of it: a sign, a word, or nothing at all.
std::optional<int> alter_of(std::string_view text) {
  if (text.empty()) return 0;
  const AccidentalPrefix sign = read_accidental(text);
  if (sign.bytes == text.size()) return sign.alter;
  return alter_of_word(text);
}

/// Whether the notes have their German names: the words for the modes say so.
bool is_german(const Words& words) {
  return std::find(words.begin(), words.end(), "dur") != words.end() ||
         std::find(words.begin(), words.end(), "moll") != words.end();
}

/// A note under its German name as it is called here; any other word stays.
std::string without_german(const std::string& word, bool german) {
  if (german && word == "h") return "b";
  if (german && word == "b") return "bb";
  const std::string here = lower_case(named_in_german(word));
  return here.empty() ? word : here;
}

/// Divides a note from the kind that is written onto it, as in "Cm", "F#m" or "Bb7".
void divide_first(Words& words) {
  static constexpr std::array<std::string_view, 7> kAttached{"m",   "7",   "maj", "min",
                                                             "dim", "dur", "dim7"};
  const std::string first = words.front();
  if (!step_of_letter(first.front())) return;
  const std::size_t sign = read_accidental(std::string_view(first).substr(1)).bytes;
  const std::string kind = first.substr(1 + sign);
  if (std::find(kAttached.begin(), kAttached.end(), kind) == kAttached.end()) return;
  words.front() = first.substr(0, 1 + sign);
  words.insert(words.begin() + 1, kind);
}

/// Takes the tonic away from the beginning of the words.
std::optional<int> take_tonic(Words& words) {
  if (words.empty()) return std::nullopt;
  words.front() = without_german(words.front(), is_german(words));
  divide_first(words);
  const std::optional<Step> step = step_of_letter(words.front().front());
  std::optional<int> alter = alter_of(std::string_view(words.front()).substr(1));
  if (!step || !alter) return std::nullopt;
  const bool letter_alone = words.front().size() == 1;
  words.erase(words.begin());
  if (letter_alone && !words.empty()) {
    if (const std::optional<int> next = alter_of_word(words.front())) {
      alter = next;
      words.erase(words.begin());
    }
  }
  return fifths_of(*step, *alter);
}

std::string full_words(Words words) {
  for (std::string& word : words) {
    for (const Synonym& synonym : kSynonyms) {
      if (word == synonym.typed) word = synonym.meant;
    }
  }
  return joined(words);
}

std::optional<ScaleKind> kind_among(std::span<const Phrase> phrases, std::string_view words) {
  for (const Phrase& phrase : phrases) {
    if (words == phrase.words) return phrase.kind;
  }
  return std::nullopt;
}

bool is_usual(ScaleName name) {
  const ScaleForm& form = scale_form(name.kind);
  return name.tonic >= form.flattest_tonic && name.tonic <= form.sharpest_tonic;
}

/// The same keys, spelled as they usually are.
ScaleName usual_spelling(ScaleName name) {
  const ScaleForm& form = scale_form(name.kind);
  while (name.tonic < form.flattest_tonic) name.tonic += kEnharmonicFifths;
  while (name.tonic > form.sharpest_tonic) name.tonic -= kEnharmonicFifths;
  return name;
}

/// The name that comes nearest to these words, among those of the same letter.
std::optional<ScaleName> nearest_name(const std::string& typed) {
  std::vector<ScaleName> names;
  std::vector<std::string> texts;
  for (const ScaleName name : all_scale_names()) {
    const Words tonic = words_of(spoken_note(name.tonic));
    if (typed.empty() || tonic.front().front() != typed.front()) continue;
    for (const Phrase& phrase : kPhrases) {
      if (phrase.kind != name.kind) continue;
      names.push_back(name);
      texts.push_back(fmt::format("{} {}", joined(tonic), phrase.words));
    }
  }
  const std::vector<std::string_view> candidates(texts.begin(), texts.end());
  const std::string_view nearest = nearest_word(typed, candidates);
  if (nearest.empty()) return std::nullopt;
  const auto found = std::find(candidates.begin(), candidates.end(), nearest);
  return names[static_cast<std::size_t>(found - candidates.begin())];
}

/// What is meant where the words after the tonic are no kind.
std::optional<ScaleName> meant_by(int tonic, const std::string& said) {
  if (const std::optional<ScaleKind> kind = kind_among(kIncomplete, said)) {
    return usual_spelling({tonic, *kind});
  }
  return nearest_name(joined(words_of(spoken_note(tonic))) + ' ' + said);
}

/// The text in quotes, fit for a message.
std::string quoted(std::string_view text) {
  std::size_t end = 0;
  for (std::size_t count = 0; count < kLongestName && end < text.size(); ++count) {
    end += first_code_point(text.substr(end)).bytes;
  }
  const std::string_view cut = end < text.size() ? "..." : "";
  return fmt::format("\"{}{}\"", printable(text.substr(0, end)), cut);
}

std::string refusal(std::string_view text, std::string_view cure) {
  return fmt::format("there is no scale {}; {}", quoted(text), cure);
}

ReadScaleName refused(std::string_view text, std::optional<ScaleName> meant) {
  if (meant) {
    return {std::nullopt, refusal(text, fmt::format("did you mean \"{}\"?", to_string(*meant)))};
  }
  constexpr std::string_view kCure =
      R"(a name is a note and a kind, as in "B-flat major" or "C harmonic minor")";
  return {std::nullopt, refusal(text, kCure), true};
}

/// Two scales that were named in one, as in "C major, G major" or "C/G major".
struct TwoNames {
  ScaleName first;
  ScaleName second;
};

/// The scale that words name, spelled as it usually is; a note alone has the kind of the other.
std::optional<ScaleName> name_in(Words words, std::optional<ScaleKind> kind_of_other) {
  const std::optional<int> tonic = take_tonic(words);
  if (!tonic) return std::nullopt;
  const std::optional<ScaleKind> kind =
      words.empty() ? kind_of_other : kind_among(kPhrases, full_words(words));
  return kind ? std::optional(usual_spelling({*tonic, *kind})) : std::nullopt;
}

std::optional<TwoNames> two_names(Words words) {
  std::erase_if(words, [](const std::string& word) { return word == "and" || word == "und"; });
  for (std::size_t count = 1; count < words.size(); ++count) {
    const auto middle = words.begin() + static_cast<std::ptrdiff_t>(count);
    const std::optional<ScaleName> second = name_in(Words(middle, words.end()), std::nullopt);
    if (!second) continue;
    const std::optional<ScaleName> first = name_in(Words(words.begin(), middle), second->kind);
    if (first) return TwoNames{*first, *second};
  }
  return std::nullopt;
}

/// Whether the words begin with the note that is B where German is not spoken.
bool begins_with_german_h(const Words& words) {
  return !words.empty() && words.front().front() == 'h' &&
         alter_of(std::string_view(words.front()).substr(1));
}

}  // namespace

std::vector<ScaleName> all_scale_names() {
  std::vector<ScaleName> names;
  for (const ScaleForm& form : scale_forms()) {
    for (int tonic = form.flattest_tonic; tonic <= form.sharpest_tonic; ++tonic) {
      names.push_back({tonic, form.kind});
    }
  }
  return names;
}

std::string to_string(ScaleName name) {
  return fmt::format("{} {}", spoken_note(name.tonic), scale_form(name.kind).name);
}

ReadScaleName read_scale_name(std::string_view text) {
  if (text.size() > kLongestName) return refused(text, std::nullopt);
  Words words = words_of(text);
  if (begins_with_german_h(words) && !is_german(words))
    return {std::nullopt, refusal(text, kGermanH)};
  const std::string typed = joined(words);
  const Words all = words;
  const std::optional<int> tonic = take_tonic(words);
  if (!tonic) return refused(text, nearest_name(typed));
  const std::string said = full_words(words);
  const std::optional<ScaleKind> kind = kind_among(kPhrases, said);
  if (!kind) {
    if (const std::optional<TwoNames> two = two_names(all)) {
      return {std::nullopt,
              refusal(text, fmt::format(R"(one at a time: "{}", then "{}")", to_string(two->first),
                                        to_string(two->second)))};
    }
    return refused(text, meant_by(*tonic, said));
  }
  const ScaleName name{*tonic, *kind};
  if (!is_usual(name)) return refused(text, usual_spelling(name));
  return {name, {}};
}

}  // namespace fingerturn
