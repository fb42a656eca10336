#include "hand/spans.hpp"

#include "catch.hpp"
#include "fingerturn/analysis.hpp"
#include "rules/made_lines.hpp"

#include <algorithm>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

/// Every limit of the table of spans, just kept and just passed: R. Parncutt and others, An
/// ergonomic model of keyboard fingering for melodic fragments, Music Perception 14(4) (1997), the
/// table from memory.
namespace fingerturn {
namespace {

constexpr int kMiddleKey = 62;

/// Two notes of these fingers, the key of the second so far toward the fifth finger's side.
Line pair_of(Hand hand, Finger first, Finger second, int toward_fifth, bool together) {
  const int way = hand == Hand::right ? toward_fifth : -toward_fifth;
  Line line;
  line.hand = hand;
  Event event;
  event.notes.push_back(note_on(kMiddleKey, first));
  if (!together) {
    line.events.push_back(event);
    event.notes.clear();
  }
  event.notes.push_back(note_on(kMiddleKey + way, second));
  std::sort(event.notes.begin(), event.notes.end(), [](const Note& lower, const Note& higher) {
    return midi_number(lower.pitch) < midi_number(higher.pitch);
  });
  line.events.push_back(event);
  return line;
}

const std::set<std::string_view> kOfSpans{"stretch", "twist", "leap", "reversed-in-chord"};

/// "caution stretch": what the rules of spans find; empty where they find nothing.
std::string found_in(const Line& line, std::optional<int> reach = std::nullopt) {
  std::string words;
  const Analysis analysis = analyse(score_of({line}), {.reach_semitones = reach});
  for (const Finding& finding : analysis.passages[0].lines[0].watch) {
    if (!kOfSpans.contains(finding.rule)) continue;
    CHECK_FALSE(finding.message.empty());
    words += std::string(words.empty() ? "" : ", ") + std::string(name_of(finding.level)) + ' ' +
             std::string(finding.rule);
  }
  return words;
}

/// What is found at a span of the pair, whichever hand plays it and whichever note comes first.
std::string found_at(const FingerSpans& spans, int span, bool together,
                     std::optional<int> reach = std::nullopt) {
  std::vector<std::string> found;
  for (const Hand hand : {Hand::right, Hand::left}) {
    found.push_back(found_in(pair_of(hand, spans.lower, spans.higher, span, together), reach));
    found.push_back(found_in(pair_of(hand, spans.higher, spans.lower, -span, together), reach));
  }
  CHECK(std::count(found.begin(), found.end(), found.front()) == 4);
  return found.front();
}

std::string words_for(const FingerSpans& spans, int span) {
  return std::to_string(spans.lower) + "-" + std::to_string(spans.higher) + " over " +
         std::to_string(span);
}

TEST_CASE("every row of the table is found at its limits and beyond", "[rules][spans]") {
  for (const FingerSpans& spans : kPublishedSpans) {
    INFO(words_for(spans, 0));
    for (const bool together : {true, false}) {
      CAPTURE(together);
      CHECK(found_at(spans, spans.widest_comfortable, together) == "");
      CHECK(found_at(spans, spans.widest_comfortable + 1, together) == "info stretch");
      CHECK(found_at(spans, spans.widest_practical, together) == "info stretch");
      CHECK(found_at(spans, spans.widest_practical + 1, together) ==
            (together ? "caution stretch" : "info leap"));
      // Below 0 fingers pass, of which other rules speak too.
      if (spans.least_comfortable > 0) {
        CHECK(found_at(spans, spans.least_comfortable, together) == "");
      }
    }
    CHECK(found_at(spans, spans.widest_practical + 2, true) == "caution stretch");
    CHECK(found_at(spans, spans.widest_practical + 3, true) == "strain stretch");
  }
}

TEST_CASE("two notes together are found below the least span of their fingers", "[rules][spans]") {
  for (const FingerSpans& spans : kPublishedSpans) {
    INFO(words_for(spans, 0));
    for (int span = spans.least_comfortable - 1; span > spans.least_practical - 9; --span) {
      CAPTURE(span);
      // The same key cannot be struck twice at once; fingers in reverse order are told by a rule of
      // their own where they would fit the other way round.
      const bool fits_reversed =
          span < 0 && -span >= spans.least_practical && -span <= spans.widest_practical;
      if (span == 0) continue;
      const bool practical = span >= spans.least_practical;
      const bool strained = span <= spans.least_practical - 5;
      const std::string twist = practical  ? "info twist"
                                : strained ? "strain twist"
                                           : "caution twist";
      CHECK(found_at(spans, span, true) == (fits_reversed ? "info reversed-in-chord" : twist));
    }
  }
}

/// Section 3: how far fingers pass.
int widest_passing(const FingerSpans& spans) {
  if (spans.lower != kThumb) return 3;
  return spans.higher == kFifth ? 4 : 5;
}

TEST_CASE("a passing is told where it is narrower than practical, and a leap where none can be",
          "[rules][spans]") {
  for (const FingerSpans& spans : kPublishedSpans) {
    INFO(words_for(spans, 0));
    for (int span = -1; span > -9; --span) {
      CAPTURE(span);
      const bool passes = -span <= widest_passing(spans);
      const bool practical = span >= spans.least_practical;
      const std::string expected = practical ? "" : passes ? "info twist" : "info leap";
      for (const Hand hand : {Hand::right, Hand::left}) {
        const std::string found =
            found_in(pair_of(hand, spans.lower, spans.higher, span, false), std::nullopt);
        // With the thumb on a black key and the other finger on a white one it is for caution.
        CHECK((found == expected || (passes && found == "caution twist")));
      }
    }
  }
}

TEST_CASE("the same key again is no twist", "[rules][spans]") {
  for (const FingerSpans& spans : kPublishedSpans) CHECK(found_at(spans, 0, false) == "");
}

TEST_CASE("the table holds together", "[rules][spans]") {
  for (const FingerSpans& spans : kPublishedSpans) {
    INFO(words_for(spans, 0));
    CHECK(spans.lower < spans.higher);
    CHECK(spans.least_practical <= spans.least_comfortable);
    CHECK(spans.least_comfortable <= spans.least_relaxed);
    CHECK(spans.least_relaxed <= spans.widest_relaxed);
    CHECK(spans.widest_relaxed <= spans.widest_comfortable);
    CHECK(spans.widest_comfortable <= spans.widest_practical);
    const FingerSpans found = spans_of(spans.higher, spans.lower, std::nullopt);
    CHECK(found.lower == spans.lower);
    CHECK(found.higher == spans.higher);
  }
}

TEST_CASE("a reach scales the widest spans of pairs with the thumb, and no others",
          "[rules][spans]") {
  constexpr int kPublishedReach = 13;
  for (const FingerSpans& spans : kPublishedSpans) {
    INFO(words_for(spans, 0));
    for (int reach = kSmallestReach; reach <= kWidestReach; ++reach) {
      CAPTURE(reach);
      const int widest = spans.lower == kThumb ? spans.widest_comfortable * reach / kPublishedReach
                                               : spans.widest_comfortable;
      CHECK(found_at(spans, widest, true, reach) == "");
      CHECK(found_at(spans, widest + 1, true, reach) == "info stretch");
      if (spans.least_comfortable - 1 == 0) continue;
      CHECK(found_at(spans, spans.least_comfortable - 1, true, reach) ==
            found_at(spans, spans.least_comfortable - 1, true));
    }
  }
}

TEST_CASE("the reach that is asked for goes before the one that is written", "[rules][spans]") {
  Score score = score_of({pair_of(Hand::right, kThumb, kFifth, 14, true)});
  const auto count = [&score](std::optional<int> asked) {
    return analyse(score, {.reach_semitones = asked}).passages[0].lines[0].watch.size();
  };
  CHECK(count(std::nullopt) == 1);
  CHECK(count(14) == 0);
  score.passages[0].reach_semitones = 14;
  CHECK(count(std::nullopt) == 0);
  CHECK(count(13) == 1);
  CHECK(analyse(score).passages[0].reach_semitones == 14);
}

}  // namespace
}  // namespace fingerturn
