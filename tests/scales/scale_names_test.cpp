#include "catch.hpp"
#include "fingerturn/scale.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace fingerturn {
namespace {

/// The title begins with the full name; "scale" stands behind those that are one.
std::string name_understood(std::string_view typed) {
  const ScaleResult result = handbook_scale(typed, {.hand = Hand::right});
  if (!result.ok()) return result.problem;
  const std::string title = result.score.passages.at(0).title;
  return title.substr(0, title.find(','));
}

}  // namespace

TEST_CASE("scale names: as a person types them", "[fingering][scales]") {
  struct Row {
    std::string_view typed;
    std::string_view understood;
  };
  constexpr std::array<Row, 57> kRows{{
      {"B-flat major", "B-flat major scale"},
      {"Bb major", "B-flat major scale"},
      {"bb major", "B-flat major scale"},
      {"b flat major", "B-flat major scale"},
      {"Bflat Major", "B-flat major scale"},
      {"B\u266D major", "B-flat major scale"},
      {"  B-flat   major\tscale ", "B-flat major scale"},
      {"BB MAJOR", "B-flat major scale"},
      {"b-major", "B major scale"},
      {"b major", "B major scale"},
      {"B\u266E major", "B major scale"},
      {"A major", "A major scale"},
      {"a flat major", "A-flat major scale"},
      {"F# harmonic minor", "F-sharp harmonic minor scale"},
      {"F\u266F harmonic minor", "F-sharp harmonic minor scale"},
      {"f-sharp-harmonic-minor", "F-sharp harmonic minor scale"},
      {"fsharp melodic minor scale", "F-sharp melodic minor scale"},
      {"E minor", "E natural minor scale"},
      {"e min", "E natural minor scale"},
      {"C maj", "C major scale"},
      {"Eb natural minor", "E-flat natural minor scale"},
      {"C chromatic", "C chromatic scale"},
      {"d flat chromatic scale", "D-flat chromatic scale"},
      {"E-flat major arpeggio", "E-flat major arpeggio"},
      {"Eb major arpeggios", "E-flat major arpeggio"},
      {"c# minor arpeggio", "C-sharp minor arpeggio"},
      {"G dominant seventh arpeggio", "G dominant seventh arpeggio"},
      {"G dominant seventh", "G dominant seventh arpeggio"},
      {"G dominant 7th", "G dominant seventh arpeggio"},
      {"g dom 7 arpeggio", "G dominant seventh arpeggio"},
      {"B diminished seventh", "B diminished seventh arpeggio"},
      {"F# dim 7th arpeggio", "F-sharp diminished seventh arpeggio"},
      {"Cb major", "C-flat major scale"},
      {"C# major", "C-sharp major scale"},
      {"Ab minor", "A-flat natural minor scale"},
      {"A# melodic minor", "A-sharp melodic minor scale"},
      {"Cm", "C natural minor scale"},
      {"f#m", "F-sharp natural minor scale"},
      {"Bbm", "B-flat natural minor scale"},
      {"Bm", "B natural minor scale"},
      {"Cmaj", "C major scale"},
      {"Ebmin", "E-flat natural minor scale"},
      {"Bdim7", "B diminished seventh arpeggio"},
      {"Cm arpeggio", "C minor arpeggio"},
      {"A minor harmonic", "A harmonic minor scale"},
      {"B minor melodic", "B melodic minor scale"},
      {"B minor natural scale", "B natural minor scale"},
      {"Es-Dur", "E-flat major scale"},
      {"As dur", "A-flat major scale"},
      {"c-moll", "C natural minor scale"},
      {"Cis dur", "C-sharp major scale"},
      {"fis-moll harmonisch", "F-sharp harmonic minor scale"},
      {"H moll", "B natural minor scale"},
      {"B-Dur", "B-flat major scale"},
      {"b-moll melodisch", "B-flat melodic minor scale"},
      {"Ges major", "G-flat major scale"},
      {"B minor", "B natural minor scale"},
  }};
  for (const Row& row : kRows) CHECK(name_understood(row.typed) == row.understood);
}

TEST_CASE("scale names: each that is listed is understood", "[fingering][scales]") {
  std::vector<std::string> names = handbook_scale_names();
  for (const std::string& name : names) {
    const std::string arpeggio = name.ends_with("arpeggio") ? "" : " scale";
    CHECK(name_understood(name) == name + arpeggio);
  }
  std::sort(names.begin(), names.end());
  CHECK(std::adjacent_find(names.begin(), names.end()) == names.end());
}

TEST_CASE("scale names: what is meant by one that is wrong", "[fingering][scales]") {
  struct Row {
    std::string_view typed;
    std::string_view meant;
  };
  constexpr std::array<Row, 28> kRows{{
      {"C scale", "C major"},
      {"G# scale", "A-flat major"},
      {"C arpeggio", "C major arpeggio"},
      {"G 7", "G dominant seventh arpeggio"},
      {"B dim", "B diminished seventh arpeggio"},
      {"F# harmonic", "F-sharp harmonic minor"},
      {"Bb majr", "B-flat major"},
      {"c shap major", "C-sharp major"},
      {"E flt major", "E-flat major"},
      {"G# major", "A-flat major"},
      {"Fb major", "E major"},
      {"Bbb major", "A major"},
      {"Cx chromatic", "D chromatic"},
      {"B# chromatic", "C chromatic"},
      {"Db minor", "C-sharp natural minor"},
      {"Bb", "B-flat major"},
      {"C harmonc minor", "C harmonic minor"},
      {"C harmonic minr scale", "C harmonic minor"},
      {"D melodic minro", "D melodic minor"},
      {"E cromatic", "E chromatic"},
      {"G dominant sevnth arpeggio", "G dominant seventh arpeggio"},
      {"A major arpegio", "A major arpeggio"},
      {"C7", "C dominant seventh arpeggio"},
      {"Bb7", "B-flat dominant seventh arpeggio"},
      {"Bdim", "B diminished seventh arpeggio"},
      {"Es", "E-flat major"},
      {"his major", "C major"},
      {"Gis-Dur", "A-flat major"},
  }};
  for (const Row& row : kRows) {
    CHECK(name_understood(row.typed) == "there is no scale \"" + std::string(row.typed) +
                                            "\"; did you mean \"" + std::string(row.meant) + "\"?");
  }
}

TEST_CASE("scale names: what is no name at all", "[fingering][scales]") {
  const std::string cure =
      R"(; a name is a note and a kind, as in "B-flat major" or "C harmonic minor")";
  for (const std::string_view typed :
       {"", " ", "-", "lydian", "C lydian", "major", "7", "C major seventh chord",
        "C scale C scale", "Cmaj7", "Csus", "harmonic minor"}) {
    CHECK(name_understood(typed) == "there is no scale \"" + std::string(typed) + "\"" + cure);
  }
  for (const std::string_view typed : {"H major", "h", "h-flat minor", "Hb major"}) {
    CHECK(name_understood(typed) == "there is no scale \"" + std::string(typed) +
                                        "\"; the note called H in German is B here");
  }
  const std::string bell_and_escape("C \x07\x1B[31m", 8);
  CHECK(name_understood(bell_and_escape) == "there is no scale \"C \uFFFD\uFFFD[31m\"" + cure);
  CHECK(name_understood(std::string_view("C\0 major", 8)) ==
        "there is no scale \"C\uFFFD major\"; did you mean \"C major\"?");
  CHECK(name_understood("\xFF\xFE major") == "there is no scale \"\uFFFD\uFFFD major\"" + cure);
  CHECK(name_understood("B\xE2\x99 major").find("\uFFFD") != std::string::npos);
  const std::string longest(1U << 20U, 'b');
  CHECK(name_understood(longest) == "there is no scale \"" + std::string(60, 'b') + "...\"" + cure);
}

TEST_CASE("scale names: of two in one each is told", "[fingering][scales]") {
  struct Row {
    std::string_view typed;
    std::string_view told;
  };
  constexpr std::array<Row, 6> kRows{{
      {"C major, G major", R"("C major", then "G major")"},
      {"C major G harmonic minor", R"("C major", then "G harmonic minor")"},
      {"C and G major", R"("C major", then "G major")"},
      {"C/G major", R"("C major", then "G major")"},
      {"Es-Dur, c-moll", R"("E-flat major", then "C natural minor")"},
      {"Am G# major", R"("A natural minor", then "A-flat major")"},
  }};
  for (const Row& row : kRows) {
    CHECK(name_understood(row.typed) == "there is no scale \"" + std::string(row.typed) +
                                            "\"; one at a time: " + std::string(row.told));
  }
}

TEST_CASE("scale names: only what comes near to none is unknown", "[fingering][scales]") {
  CHECK(handbook_scale("lydian").is_unknown);
  CHECK(handbook_scale(std::string(1000, 'b')).is_unknown);
  CHECK_FALSE(handbook_scale("Bb majr").is_unknown);
  CHECK_FALSE(handbook_scale("H major").is_unknown);
  CHECK_FALSE(handbook_scale("B major").is_unknown);
}

}  // namespace fingerturn
