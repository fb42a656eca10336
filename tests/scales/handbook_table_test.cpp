#include "catch.hpp"
#include "scales/made_scales.hpp"
#include "scales/names.hpp"
#include "score/line_of_fifths.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>

/// Every handbook fingering written out over two octaves upward; the table in the program has them
/// by the octave and for several keys at once. Source: C.-L. Hanon, The Virtuoso Pianist (1873),
/// nos. 39 to 41, and J. F. Cooke, Mastering the Scales and Arpeggios (1913), from memory, not
/// compared with the books: it finds slips in the other table, not what is remembered wrongly.
namespace fingerturn {
namespace {

struct Row {
  std::string_view name;
  std::string_view right;  ///< with a blank after each octave
  std::string_view left;
};

constexpr std::array<Row, 97> kRows{{
    {"C major", "1231234 1231234 5", "5432132 1432132 1"},
    {"Db major", "2312341 2312341 2", "3214321 3214321 3"},
    {"D major", "1231234 1231234 5", "5432132 1432132 1"},
    {"Eb major", "3123412 3123412 3", "3214321 3214321 3"},
    {"E major", "1231234 1231234 5", "5432132 1432132 1"},
    {"F major", "1234123 1234123 4", "5432132 1432132 1"},
    {"F# major", "2341231 2341231 2", "4321321 4321321 4"},
    {"G major", "1231234 1231234 5", "5432132 1432132 1"},
    {"Ab major", "3412312 3412312 3", "3214321 3214321 3"},
    {"A major", "1231234 1231234 5", "5432132 1432132 1"},
    {"Bb major", "4123123 4123123 4", "3214321 3214321 3"},
    {"B major", "1231234 1231234 5", "4321432 1321432 1"},
    {"C natural minor", "1231234 1231234 5", "5432132 1432132 1"},
    {"C# natural minor", "3412312 3412312 3", "3214321 3214321 3"},
    {"D natural minor", "1231234 1231234 5", "5432132 1432132 1"},
    {"Eb natural minor", "3123412 3123412 3", "2143213 2143213 2"},
    {"E natural minor", "1231234 1231234 5", "5432132 1432132 1"},
    {"F natural minor", "1234123 1234123 4", "5432132 1432132 1"},
    {"F# natural minor", "3412312 3412312 3", "4321321 4321321 4"},
    {"G natural minor", "1231234 1231234 5", "5432132 1432132 1"},
    {"G# natural minor", "3412312 3412312 3", "3213214 3213214 3"},
    {"A natural minor", "1231234 1231234 5", "5432132 1432132 1"},
    {"Bb natural minor", "4123123 4123123 4", "2132143 2132143 2"},
    {"B natural minor", "1231234 1231234 5", "4321432 1321432 1"},
    {"C harmonic minor", "1231234 1231234 5", "5432132 1432132 1"},
    {"C# harmonic minor", "3412312 3412312 3", "3214321 3214321 3"},
    {"D harmonic minor", "1231234 1231234 5", "5432132 1432132 1"},
    {"Eb harmonic minor", "3123412 3123412 3", "2143213 2143213 2"},
    {"E harmonic minor", "1231234 1231234 5", "5432132 1432132 1"},
    {"F harmonic minor", "1234123 1234123 4", "5432132 1432132 1"},
    {"F# harmonic minor", "3412312 3412312 3", "4321321 4321321 4"},
    {"G harmonic minor", "1231234 1231234 5", "5432132 1432132 1"},
    {"G# harmonic minor", "3412312 3412312 3", "3214321 3214321 3"},
    {"A harmonic minor", "1231234 1231234 5", "5432132 1432132 1"},
    {"Bb harmonic minor", "4123123 4123123 4", "2132143 2132143 2"},
    {"B harmonic minor", "1231234 1231234 5", "4321432 1321432 1"},
    {"C melodic minor", "1231234 1231234 5", "5432132 1432132 1"},
    {"C# melodic minor", "2312341 2312341 2", "3214321 3214321 3"},
    {"D melodic minor", "1231234 1231234 5", "5432132 1432132 1"},
    {"Eb melodic minor", "3123412 3123412 3", "2143213 2143213 2"},
    {"E melodic minor", "1231234 1231234 5", "5432132 1432132 1"},
    {"F melodic minor", "1234123 1234123 4", "5432132 1432132 1"},
    {"F# melodic minor", "2312341 2312341 2", "4321321 4321321 4"},
    {"G melodic minor", "1231234 1231234 5", "5432132 1432132 1"},
    {"G# melodic minor", "3412312 3412312 3", "3214321 3214321 3"},
    {"A melodic minor", "1231234 1231234 5", "5432132 1432132 1"},
    {"Bb melodic minor", "4123123 4123123 4", "2132143 2132143 2"},
    {"B melodic minor", "1231234 1231234 5", "4321432 1321432 1"},
    {"C major arpeggio", "123 123 5", "542 142 1"},
    {"Db major arpeggio", "412 412 4", "214 214 2"},
    {"D major arpeggio", "123 123 5", "532 132 1"},
    {"Eb major arpeggio", "412 412 4", "214 214 2"},
    {"E major arpeggio", "123 123 5", "532 132 1"},
    {"F major arpeggio", "123 123 5", "542 142 1"},
    {"F# major arpeggio", "123 123 5", "532 132 1"},
    {"G major arpeggio", "123 123 5", "542 142 1"},
    {"Ab major arpeggio", "412 412 4", "214 214 2"},
    {"A major arpeggio", "123 123 5", "532 132 1"},
    {"Bb major arpeggio", "412 412 4", "321 321 3"},
    {"B major arpeggio", "123 123 5", "532 132 1"},
    {"C minor arpeggio", "123 123 5", "542 142 1"},
    {"C# minor arpeggio", "412 412 4", "214 214 2"},
    {"D minor arpeggio", "123 123 5", "542 142 1"},
    {"Eb minor arpeggio", "123 123 5", "542 142 1"},
    {"E minor arpeggio", "123 123 5", "542 142 1"},
    {"F minor arpeggio", "123 123 5", "542 142 1"},
    {"F# minor arpeggio", "412 412 4", "214 214 2"},
    {"G minor arpeggio", "123 123 5", "542 142 1"},
    {"G# minor arpeggio", "412 412 4", "214 214 2"},
    {"A minor arpeggio", "123 123 5", "542 142 1"},
    {"Bb minor arpeggio", "231 231 2", "321 321 3"},
    {"B minor arpeggio", "123 123 5", "542 142 1"},
    {"C dominant seventh", "1234 1234 5", "5432 1432 1"},
    {"Db dominant seventh", "4123 4123 4", "2143 2143 2"},
    {"D dominant seventh", "1234 1234 5", "5432 1432 1"},
    {"Eb dominant seventh", "4123 4123 4", "2143 2143 2"},
    {"E dominant seventh", "1234 1234 5", "5432 1432 1"},
    {"F dominant seventh", "1234 1234 5", "5432 1432 1"},
    {"F# dominant seventh", "2341 2341 2", "4321 4321 4"},
    {"G dominant seventh", "1234 1234 5", "5432 1432 1"},
    {"Ab dominant seventh", "4123 4123 4", "2143 2143 2"},
    {"A dominant seventh", "1234 1234 5", "5432 1432 1"},
    {"Bb dominant seventh", "4123 4123 4", "3214 3214 3"},
    {"B dominant seventh", "1234 1234 5", "5432 1432 1"},
    {"C diminished seventh", "1234 1234 5", "5432 1432 1"},
    {"C# diminished seventh", "4123 4123 4", "3214 3214 3"},
    {"D diminished seventh", "1234 1234 5", "5432 1432 1"},
    {"Eb diminished seventh", "3412 3412 3", "4321 4321 4"},
    {"E diminished seventh", "1234 1234 5", "5432 1432 1"},
    {"F diminished seventh", "1234 1234 5", "5432 1432 1"},
    {"F# diminished seventh", "4123 4123 4", "3214 3214 3"},
    {"G diminished seventh", "1234 1234 5", "5432 1432 1"},
    {"Ab diminished seventh", "4123 4123 4", "4321 4321 4"},
    {"A diminished seventh", "1234 1234 5", "5432 1432 1"},
    {"Bb diminished seventh", "3412 3412 3", "4321 4321 4"},
    {"B diminished seventh", "1234 1234 5", "5432 1432 1"},
    {"C chromatic", "131312313131 231312313131 2", "131321313132 131321313132 1"},
}};

std::string without_blanks(std::string_view fingers) {
  std::string digits(fingers);
  digits.erase(std::remove(digits.begin(), digits.end(), ' '), digits.end());
  return digits;
}

void check_row(std::string_view name, const Row& row) {
  INFO(name << ", written out as " << row.name);
  CHECK(fingers_in_order(scale_line(name, Hand::right, 2)) == without_blanks(row.right));
  CHECK(fingers_in_order(scale_line(name, Hand::left, 2)) == without_blanks(row.left));
}

/// Whether two scales are the same but for their spelling.
bool same_keys(ScaleName one, ScaleName other) {
  return one.kind == other.kind && semitones_above_c(one.tonic) == semitones_above_c(other.tonic);
}

}  // namespace

TEST_CASE("scales: all have the fingers that are written out, however they are spelled",
          "[fingering][scales]") {
  for (const ScaleName name : all_scale_names()) {
    const bool other_chromatic = name.kind == ScaleKind::chromatic && name.tonic != 0;
    if (other_chromatic) continue;
    const auto is_row = [name](const Row& row) {
      return same_keys(name, read_scale_name(row.name).name.value());
    };
    INFO(to_string(name));
    REQUIRE(std::count_if(kRows.begin(), kRows.end(), is_row) == 1);
    check_row(to_string(name), *std::find_if(kRows.begin(), kRows.end(), is_row));
  }
}

}  // namespace fingerturn
