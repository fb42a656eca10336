#include "fingerturn/find.hpp"
#include "text/numbers.hpp"
#include "text/utf8.hpp"
#include "text/words.hpp"
#include "views/find/words.hpp"

#include <algorithm>
#include <utility>

#include <fmt/core.h>

namespace fingerturn {
namespace {

/// A word between blanks, or a bracket.
struct Token {
  std::size_t column = 1;  ///< counted in bytes, from 1
  std::string_view text;
};

std::vector<Token> tokens_of(std::string_view text) {
  constexpr std::string_view kEnds = " \t()";
  std::vector<Token> tokens;
  for (std::size_t at = 0; at < text.size();) {
    const bool is_blank = text[at] == ' ' || text[at] == '\t';
    const bool is_bracket = text[at] == '(' || text[at] == ')';
    const std::size_t end =
        is_blank || is_bracket ? at + 1 : std::min(text.find_first_of(kEnds, at), text.size());
    if (!is_blank) tokens.push_back({at + 1, text.substr(at, end - at)});
    at = end;
  }
  return tokens;
}

/// How often a run comes: "x4", "x4+".
struct Times {
  int least = 1;
  bool or_more = false;
};

std::optional<Times> times_in(std::string_view word) {
  if (!word.starts_with('x')) return std::nullopt;
  const bool or_more = word.ends_with('+');
  word = word.substr(1, word.size() - (or_more ? 2 : 1));
  const std::optional<int> least = number_in<int>(word);
  const bool is_count = least && *least >= 1 && *least <= static_cast<int>(kMostWantedEvents);
  return is_count ? std::optional(Times{*least, or_more}) : std::nullopt;
}

std::optional<Hand> hand_in(std::string_view word) {
  if (word == "rh:") return Hand::right;
  if (word == "lh:") return Hand::left;
  return std::nullopt;
}

class PatternParser {
 public:
  explicit PatternParser(std::string_view text) : tokens_(tokens_of(text)) {}

  FindPatternResult parse() {
    for (const Token& token : tokens_) {
      take(token);
      if (!problem_.empty()) return {std::nullopt, std::move(problem_)};
    }
    if (in_group_) {
      fail(tokens_.back(), "expected a closing bracket behind the events that come again");
    } else if (pattern_.runs.empty()) {
      problem_ = R"(expected events to look for, as in "double x5+" or "4 5 4")";
    } else if (wanted_events() > kMostWantedEvents) {
      problem_ =
          fmt::format("expected {} events at most, found {}", kMostWantedEvents, wanted_events());
    }
    if (!problem_.empty()) return {std::nullopt, std::move(problem_)};
    return {std::move(pattern_), {}};
  }

 private:
  void fail(const Token& token, std::string_view words) {
    problem_ = fmt::format("column {}: {}", token.column, words);
  }

  void take(const Token& token) {
    if (token.text == "(") return open(token);
    if (token.text == ")") return close(token);
    const std::string word = lower_case(token.text);
    if (const auto hand = hand_in(word)) return take_hand(token, *hand);
    if (const auto times = times_in(word)) return repeat(token, *times);
    if (word.starts_with('x') && word.find_first_not_of("0123456789+", 1) == std::string::npos) {
      return fail(token, fmt::format("expected a number from 1 to {} behind x", kMostWantedEvents));
    }
    add_event(token, word);
  }

  void take_hand(const Token& token, Hand hand) {
    if (&token != &tokens_.front()) return fail(token, "expected the hand at the beginning");
    pattern_.hand = hand;
  }

  void open(const Token& token) {
    if (in_group_) return fail(token, "expected no group within a group");
    in_group_ = true;
    pattern_.runs.emplace_back();
  }

  void close(const Token& token) {
    if (!in_group_) return fail(token, "expected an opening bracket before it");
    if (pattern_.runs.back().events.empty()) return fail(token, "expected events in the group");
    in_group_ = false;
  }

  void repeat(const Token& token, Times times) {
    const bool follows_run = !in_group_ && !pattern_.runs.empty() && !is_repeated_;
    if (!follows_run) {
      return fail(token, "expected an event, or a group in brackets, before x and a number");
    }
    pattern_.runs.back().times = times.least;
    pattern_.runs.back().or_more = times.or_more;
    is_repeated_ = true;
  }

  void add_event(const Token& token, std::string_view joined) {
    WantedEvent wanted;
    for (std::size_t at = 0; at <= joined.size();) {
      const std::size_t end = std::min(joined.find(',', at), joined.size());
      const std::string problem = add_word(joined.substr(at, end - at), wanted);
      if (!problem.empty()) return fail({token.column + at, {}}, problem);
      at = end + 1;
    }
    if (!in_group_) pattern_.runs.emplace_back();
    pattern_.runs.back().events.push_back(std::move(wanted));
    is_repeated_ = false;
  }

  [[nodiscard]] std::size_t wanted_events() const {
    std::size_t count = 0;
    for (const WantedRun& run : pattern_.runs) {
      count += run.events.size() * static_cast<std::size_t>(run.times);
    }
    return count;
  }

  std::vector<Token> tokens_;
  FindPattern pattern_;
  bool in_group_ = false;
  bool is_repeated_ = false;  ///< the last run has its number already
  std::string problem_;
};

}  // namespace

FindPatternResult parse_find_pattern(std::string_view text) { return PatternParser(text).parse(); }

}  // namespace fingerturn
