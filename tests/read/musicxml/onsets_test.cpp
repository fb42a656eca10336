#include "catch.hpp"
#include "fingerturn/read.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <map>
#include <optional>
#include <random>
#include <string>
#include <vector>

/// Time only goes on. Scores are made by chance, of every kind of divisions, durations, moves back
/// and forward, in one part or two, and what their lines say of time is held to what a second,
/// plain count of the same score gives.
using namespace fingerturn;

namespace {

/// Divisions of a quarter note. Many have nothing in common, so that two parts, or two measures,
/// can only be counted together in very fine steps.
struct Divisions {
  const char* text = "";
  Fraction value;
};
const std::array<Divisions, 16> kDivisions{{{"1", {1, 1}},
                                            {"2", {2, 1}},
                                            {"3", {3, 1}},
                                            {"7", {7, 1}},
                                            {"16", {16, 1}},
                                            {"24", {24, 1}},
                                            {"480", {480, 1}},
                                            {"10080", {10080, 1}},
                                            {"0.5", {1, 2}},
                                            {"2.5", {5, 2}},
                                            {"65536", {65536, 1}},
                                            {"59049", {59049, 1}},
                                            {"390625", {390625, 1}},
                                            {"999979", {999979, 1}},
                                            {"999983", {999983, 1}},
                                            {"1000000", {1000000, 1}}}};

/// Makes a part and counts its time in quarter notes as it goes along.
class MadePart {
 public:
  explicit MadePart(std::uint32_t seed) : chance_(seed) {}

  std::string measures(std::size_t count, bool long_ones) {
    std::string text;
    for (std::size_t i = 0; i < count; ++i) text += measure(i, long_ones);
    return text;
  }
  /// How long each measure is, in quarter notes; none where that is beyond 64 bits.
  [[nodiscard]] const std::vector<std::optional<Fraction>>& lengths() const { return lengths_; }

 private:
  std::uint32_t below(std::uint32_t end) { return static_cast<std::uint32_t>(chance_()) % end; }
  bool one_in(std::uint32_t count) { return below(count) == 0; }

  std::string measure(std::size_t place, bool is_long) {
    now_ = furthest_ = Fraction{};
    std::string text = "<measure" + number(place) + ">";
    if (place == 0 || one_in(3)) text += divisions();
    if (is_long) text += move("forward", longest_duration());
    for (std::uint32_t i = below(12); i > 0; --i) text += something();
    lengths_.push_back(furthest_);
    return text + "</measure>";
  }

  std::string number(std::size_t place) {
    if (one_in(6)) return "";
    if (one_in(6)) return " number=\"X\"";
    return " number=\"" + std::to_string(place + 1) + "\"";
  }

  std::string divisions() {
    const Divisions& chosen = kDivisions.at(below(kDivisions.size()));
    divisions_ = chosen.value;
    return "<attributes><divisions>" + std::string(chosen.text) + "</divisions></attributes>";
  }

  struct Duration {
    std::string text;
    Fraction value;
  };
  Duration duration() {
    const std::uint32_t quarter = static_cast<std::uint32_t>(
        std::max<std::int64_t>(1, divisions_.numerator / divisions_.denominator));
    if (one_in(20)) return {"0.5", {1, 2}};
    if (one_in(20)) return {"1.125", {9, 8}};
    const std::uint32_t count = one_in(2) ? quarter * (1 + below(4)) : 1 + below(3 * quarter);
    return {std::to_string(count), {count, 1}};
  }
  /// That of 9,000 quarter notes.
  Duration longest_duration() {
    const Fraction value = *product(divisions_, {9000, 1});
    const std::int64_t whole = value.numerator / value.denominator;
    return {std::to_string(whole), {whole, 1}};
  }

  /// Time goes by, where it can be told.
  void pass(const Duration& duration, bool back) {
    const auto quarters = product(duration.value, {divisions_.denominator, divisions_.numerator});
    if (!quarters || !now_) {
      now_.reset();
      furthest_.reset();
      return;
    }
    now_ = sum(*now_, back ? Fraction{-quarters->numerator, quarters->denominator} : *quarters);
    if (now_ && *now_ < Fraction{}) now_ = Fraction{};
    if (!now_ || !furthest_) return furthest_.reset();
    furthest_ = std::max(*furthest_, *now_);
  }

  std::string move(const std::string& name, const Duration& duration) {
    pass(duration, name == "backup");
    return "<" + name + "><duration>" + duration.text + "</duration></" + name + ">";
  }

  std::string something() {
    switch (below(8)) {
      case 0:
        return move("backup", duration());
      case 1:
        return move("forward", duration());
      case 2:
        return one_in(3) ? divisions() : "";
      case 3:
        return "<note><grace/>" + pitch() + place() + "</note>";
      case 4:
        return timed("<rest/>") + place() + "</note>";
      default:
        return timed(pitch()) + place() + "</note>" + chord();
    }
  }

  std::string timed(const std::string& inside) {
    const Duration chosen = duration();
    pass(chosen, false);
    return "<note>" + inside + "<duration>" + chosen.text + "</duration>";
  }

  std::string chord() {
    if (!one_in(3)) return "";
    return "<note><chord/>" + pitch() + "<duration>" + duration().text + "</duration>" + place() +
           "</note>";
  }

  std::string pitch() {
    constexpr std::array kSteps{"C", "D", "E", "F", "G", "A", "B"};
    return std::string("<pitch><step>") + kSteps.at(below(kSteps.size())) + "</step><octave>" +
           std::to_string(1 + below(7)) + "</octave></pitch>";
  }

  std::string place() {
    return "<voice>" + std::to_string(1 + below(4)) + "</voice><staff>" +
           std::to_string(1 + below(2)) + "</staff>";
  }

  std::mt19937 chance_;
  Fraction divisions_{1, 1};
  std::optional<Fraction> now_ = Fraction{};
  std::optional<Fraction> furthest_ = Fraction{};
  std::vector<std::optional<Fraction>> lengths_;
};

struct MadeScore {
  std::string text;
  std::optional<Fraction> quarters;  ///< how long it is
};

std::optional<Fraction> longer(const std::vector<std::optional<Fraction>>& one,
                               const std::vector<std::optional<Fraction>>& other) {
  std::optional<Fraction> time = Fraction{};
  for (std::size_t i = 0; i < std::max(one.size(), other.size()); ++i) {
    const std::optional<Fraction> first = i < one.size() ? one[i] : Fraction{};
    const std::optional<Fraction> second = i < other.size() ? other[i] : Fraction{};
    if (!time || !first || !second) return std::nullopt;
    time = sum(*time, std::max(*first, *second));
  }
  return time;
}

MadeScore made_score(std::uint32_t seed) {
  MadePart right(2 * seed);
  MadePart left(2 * seed + 1);
  const bool two_parts = seed % 2 == 0;
  // Some go on for so long that their times, finely counted, are beyond 64 bits.
  const bool is_long = seed % 25 == 0;
  const std::size_t bars = is_long ? 1200 : 1 + seed % 5;
  const std::string staves = two_parts ? "" : "<attributes><staves>2</staves></attributes>";
  std::string text =
      "<score-partwise><part-list><score-part id=\"R\"><part-name>Piano right</part-name>"
      "</score-part><score-part id=\"L\"><part-name>Piano left</part-name></score-part>"
      "</part-list><part id=\"R\">" +
      (two_parts ? "" : "<measure number=\"0\">" + staves + "</measure>") +
      right.measures(bars, is_long) + "</part>";
  if (two_parts) text += "<part id=\"L\">" + left.measures(bars + seed % 3, is_long) + "</part>";
  return {text + "</score-partwise>", longer(right.lengths(), left.lengths())};
}

/// Each event begins when the one before it ends. Gives the end of the line.
Fraction end_of(const Line& line) {
  Fraction time;
  for (const Event& event : line.events) {
    REQUIRE(event.onset.has_value());
    REQUIRE(event.duration.has_value());
    REQUIRE(*event.onset == time);
    REQUIRE(*event.duration >= Fraction{});
    const std::optional<Fraction> end = sum(*event.onset, *event.duration);
    REQUIRE(end.has_value());
    time = *end;
  }
  return time;
}

/// When each bar begins.
std::map<std::int32_t, Fraction> bars_in(const Line& line) {
  std::map<std::int32_t, Fraction> bars;
  for (const Event& event : line.events) bars.try_emplace(event.bar, *event.onset);
  return bars;
}

bool begin_together(const Line& one, const Line& other) {
  const std::map<std::int32_t, Fraction> bars = bars_in(one);
  const std::map<std::int32_t, Fraction> others = bars_in(other);
  return std::all_of(others.begin(), others.end(), [&bars](const auto& bar) {
    const auto same = bars.find(bar.first);
    return same == bars.end() || same->second == bar.second;
  });
}

}  // namespace

TEST_CASE("musicxml: onsets never fall") {
  std::size_t whole = 0;
  std::size_t refused = 0;
  for (std::uint32_t seed = 1; seed <= 2000; ++seed) {
    CAPTURE(seed);
    const MadeScore made = made_score(seed);
    const ReadResult result = read(Source("made.musicxml", made.text));
    for (const Diagnostic& diagnostic : result.diagnostics.kept) {
      REQUIRE((diagnostic.severity == Severity::warning || diagnostic.code == "musicxml-time"));
    }
    for (const Passage& passage : result.score.passages) {
      for (const Line& line : passage.lines) {
        const Fraction end = end_of(line);
        if (result.ok() && made.quarters) CHECK(product(end, {4, 1}) == made.quarters);
      }
      if (passage.lines.size() == 2) CHECK(begin_together(passage.lines[0], passage.lines[1]));
    }
    ++(result.ok() ? whole : refused);
  }
  // Both are tried.
  CHECK(whole > 500);
  CHECK(refused > 500);
}
