#include "fingerturn/why.hpp"
#include "text/utf8.hpp"
#include "text/wrap.hpp"

#include <algorithm>
#include <string>
#include <vector>

#include <fmt/format.h>

namespace fingerturn {
namespace {

/// "4 on F#4", of a chord "1-3-5 on C4, E4 and G4".
std::string fingers_on(const std::vector<Finger>& fingers, const std::vector<Pitch>& pitches) {
  std::string names;
  for (std::size_t i = 0; i < pitches.size(); ++i) {
    if (i > 0) names += i + 1 == pitches.size() ? " and " : ", ";
    names += to_string(pitches[i]);
  }
  return fmt::format("{} on {}", fmt::join(fingers, "-"), names);
}

std::string head_of(const WhyFingers& why) {
  const std::string title = why.title.empty() ? "" : printable(why.title) + ", ";
  return fmt::format("{}bar {}, beat {}, {} hand: {}{}", title, why.bar, why.beat,
                     to_string(why.hand), fingers_on(why.fingers, why.pitches),
                     why.all_given ? ", given" : "");
}

std::string comparison_words(double harder) {
  if (harder == 0) return "as easy";
  return fmt::format("{} by {:.2f}", harder > 0 ? "harder" : "easier",
                     harder > 0 ? harder : -harder);
}

/// "small-span +1.10, stretch +0.52, 3 smaller +0.20"
std::string terms_of(const OtherFingers& other) {
  constexpr std::size_t kMostNamed = 4;
  std::string words;
  double rest = 0;
  for (std::size_t i = 0; i < other.terms.size(); ++i) {
    const TermDifference& term = other.terms[i];
    if (i >= kMostNamed) {
      rest += term.harder;
    } else {
      words += fmt::format("{}{} {:+.2f}", i == 0 ? "" : ", ", term.id, term.harder);
    }
  }
  if (other.terms.size() <= kMostNamed) return words;
  return words + fmt::format(", {} smaller {:+.2f}", other.terms.size() - kMostNamed, rest);
}

}  // namespace

std::string write_why_text(const WhyFingers& why, int columns) {
  std::string text = wrapped("", head_of(why), columns);
  if (why.fingers.empty()) return text + wrapped("  ", "no hand can take this", columns);
  if (why.others.empty()) text += wrapped("  ", "no other finger can take it", columns);
  for (const OtherFingers& other : why.others) {
    text +=
        wrapped(fmt::format("  {}  ", fmt::join(other.fingers, "-")),
                fmt::format("{}: {}", comparison_words(other.harder), terms_of(other)), columns);
  }
  return text;
}

std::string write_why_legend(const std::vector<WhyFingers>& all, int columns) {
  std::string text = wrapped(
      "",
      "Numbers are parts of the model's sum over the whole line, each with the easiest fingers for "
      "all the rest; above 0 they speak against the other fingers (docs/fingering.md).",
      columns);
  for (const DifficultyTerm& term : difficulty_terms()) {
    const bool is_told = std::ranges::any_of(all, [&](const WhyFingers& why) {
      return std::ranges::any_of(why.others, [&](const OtherFingers& other) {
        return terms_of(other).find(std::string(term.id) + ' ') != std::string::npos;
      });
    });
    if (is_told) text += wrapped(fmt::format("  {}: ", term.id), term.counts, columns);
  }
  return text;
}

}  // namespace fingerturn
