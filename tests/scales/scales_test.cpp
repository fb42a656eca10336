#include "catch.hpp"
#include "fingering/made_tasks.hpp"
#include "scales/made_scales.hpp"

#include <array>
#include <string>
#include <string_view>

/// How many of the handbook fingerings the model finds when it is given none of their fingers:
/// every name, in each hand, over one octave and two, up and down apart. docs/fingering.md has the
/// same numbers.
namespace fingerturn {
namespace {

/// Scales that come out whole.
struct Whole {
  int one_octave = 0;
  int two_octaves = 0;

  friend bool operator==(const Whole&, const Whole&) = default;
};

struct Measured {
  std::string_view kind;
  int scales = 0;  ///< of one octave, and as many of two
  Whole whole;     ///< as measured with the weights in use
};

constexpr std::array<Measured, 9> kMeasured{{
    {"major", 60, {32, 18}},
    {"natural minor", 60, {28, 12}},
    {"harmonic minor", 60, {28, 16}},
    {"melodic minor", 60, {28, 17}},
    {"major arpeggio", 60, {34, 34}},
    {"minor arpeggio", 60, {36, 0}},
    {"dominant seventh arpeggio", 60, {14, 6}},
    {"diminished seventh arpeggio", 60, {16, 0}},
    {"chromatic", 68, {0, 0}},
}};

bool comes_out_whole(const std::string& name, Hand hand, int octaves, ScaleDirection direction) {
  const Line line = scale_line(name, hand, octaves, direction);
  return fingers_in_order(completed(without_fingers(line))) == fingers_in_order(line);
}

int whole_of(const std::string& name, int octaves) {
  int whole = 0;
  for (const Hand hand : {Hand::right, Hand::left}) {
    for (const ScaleDirection direction : {ScaleDirection::up, ScaleDirection::down}) {
      whole += comes_out_whole(name, hand, octaves, direction) ? 1 : 0;
    }
  }
  return whole;
}

/// The names of a kind: "B-flat major" is one of "major", "B-flat major arpeggio" is not.
bool is_of_kind(std::string_view name, std::string_view kind) {
  return name.substr(name.find(' ') + 1) == kind;
}

}  // namespace

TEST_CASE("fingering: handbook scales reproduced whole", "[fingering]") {
  constexpr int kWays = 4;  // two hands, up and down
  for (const Measured& measured : kMeasured) {
    Whole whole;
    int scales = 0;
    for (const std::string& name : handbook_scale_names()) {
      if (!is_of_kind(name, measured.kind)) continue;
      scales += kWays;
      whole.one_octave += whole_of(name, 1);
      whole.two_octaves += whole_of(name, 2);
    }
    INFO(measured.kind << ": " << whole.one_octave << " and " << whole.two_octaves);
    CHECK(scales == measured.scales);
    CHECK(whole == measured.whole);
  }
}

TEST_CASE("fingering: the scales of C, G, D, A and E major over one octave come out whole",
          "[fingering]") {
  for (const std::string_view tonic : {"C", "G", "D", "A", "E"}) {
    INFO(tonic);
    CHECK(whole_of(std::string(tonic) + " major", 1) == 4);
  }
}

}  // namespace fingerturn
