#include "fingering/figures.hpp"

#include "catch.hpp"
#include "fingering/made_tasks.hpp"
#include "fingerturn/fingering.hpp"
#include "fingerturn/scale.hpp"
#include "hand/keyboard.hpp"

#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// Figures of the trade: scales, arpeggios and parts of them. The fingers are those of the
/// handbooks as `scale` writes them, from memory; those of parts are worked out by hand from the
/// rules that docs/fingering.md states.
namespace fingerturn {
namespace {

std::vector<Figure> figures_in(const Line& line) {
  return figures_of(line.hand, grips_of(line, SpanTable(std::nullopt)));
}

std::string fingers_without_any(const Line& line) {
  return fingers_of(completed(without_fingers(line)));
}

/// A line of eighths without fingers and its easiest fingers.
std::string easiest(std::string_view notes, std::string_view hand = "right") {
  return fingers_without_any(
      line_written("hand: " + std::string(hand) + "\n1/8 " + std::string(notes)));
}

std::string words_in(std::string_view notes, std::string_view hand = "right") {
  const Line line = completed(
      without_fingers(line_written("hand: " + std::string(hand) + "\n1/8 " + std::string(notes))));
  std::string words;
  for (const UsualFingers& usual : line.usual) words += (words.empty() ? "" : "; ") + usual.words;
  return words;
}

constexpr std::array kDirections{ScaleDirection::up, ScaleDirection::down,
                                 ScaleDirection::up_and_down};

}  // namespace

TEST_CASE("every scale and arpeggio of the handbooks comes out whole without a finger given",
          "[fingering][figures]") {
  std::size_t count = 0;
  for (const std::string& name : handbook_scale_names()) {
    for (int octaves = 1; octaves <= kMostScaleOctaves; ++octaves) {
      for (const ScaleDirection direction : kDirections) {
        const ScaleResult scale =
            handbook_scale(name, {.octaves = octaves, .direction = direction});
        // The longest may not fit on the piano.
        if (!scale.problem.empty()) continue;
        for (const Line& line : scale.score.passages.at(0).lines) {
          INFO(name << ", " << octaves << " octaves, " << to_string(line.hand));
          CHECK(fingers_without_any(line) == fingers_of(line));
          ++count;
        }
      }
    }
  }
  CHECK(count > 3000);
}

TEST_CASE("a whole figure is named by the scale as it is spelled", "[fingering][figures]") {
  CHECK(words_in("Eb4 F G Ab Bb C D Eb") == "E-flat major scale, fingers of the handbook");
  CHECK(words_in("D#4 E# F## G# A# B# C## D#") == "D-sharp major scale, fingers of the handbook");
  CHECK(words_in("A3 C4 E A") == "A minor arpeggio, fingers of the handbook");
  CHECK(words_in("C5 B4 Bb A Ab G Gb F E Eb D Db C") ==
        "C chromatic scale, fingers of the handbook");
}

TEST_CASE("a part of a scale has the fingers with the fewest passings", "[fingering][figures]") {
  // From D to D the thumb passes once, wherever the tonic lies.
  CHECK(easiest("D4 E F G A B C D") == "1 2 3 1 2 3 4 5");
  CHECK(easiest("D5 C B A G F E D", "left") == "1 2 3 1 2 3 4 5");
  CHECK(words_in("C4 D E F G A B") == "part of C major scale, fingers of the handbook");
  CHECK(words_in("D4 E F G A B C D") == "a scale that begins with the thumb (our convention)");
}

TEST_CASE("no thumb of a part falls on a black key", "[fingering][figures]") {
  const Line line = line_written("1/8 Bb3 C4 D Eb F G Ab Bb C D");
  const std::vector<Figure> figures = figures_in(line);
  REQUIRE(figures.size() == 1);
  for (std::size_t i = 0; i < figures[0].fingers.size(); ++i) {
    const bool black = line.events[i].notes[0].pitch.alter != 0;
    CHECK_FALSE((black && figures[0].fingers[i] == kThumb));
  }
}

TEST_CASE("where a scale turns, the finger is the one that leads on", "[fingering][figures]") {
  const std::vector<Figure> figures =
      figures_in(line_written("1/8 A4 B C#5 D E F# G# A G F E D C B A"));
  REQUIRE(figures.size() == 2);
  CHECK(figures[0].end == figures[1].begin + 1);
  CHECK(figures[0].is_whole);
  CHECK(figures[1].is_whole);
}

TEST_CASE("what is no run of one scale is no figure", "[fingering][figures]") {
  CHECK(figures_in(line_written("1/8 C4 D E F G A")).empty());            // too short a part
  CHECK(figures_in(line_written("1/8 C4 D E r F G A B C")).empty());      // parted by a rest
  CHECK(figures_in(line_written("1/8 C4 D E F# G A# B C D E")).empty());  // of no scale
  CHECK(figures_in(line_written("1/8 C4 E D F E G F A G B")).empty());    // to and fro
  CHECK(figures_in(line_written("1/8 C4+E D F E+G F A B C D")).empty());
}

TEST_CASE("an arpeggio from another note begins with the thumb and ends with 5",
          "[fingering][figures]") {
  CHECK(easiest("E4 G C5 E G C6 E") == "1 2 4 1 2 4 5");
  CHECK(easiest("G3 C4 E G C5 E G") == "1 2 4 1 2 4 5");
  CHECK(easiest("E5 C G4 E C G3 E", "left") == "1 2 4 1 2 4 5");
}

TEST_CASE("inversions of arpeggios come out whole over two octaves and more",
          "[fingering][figures]") {
  std::size_t count = 0;
  for (const std::string& name : handbook_scale_names()) {
    if (!name.ends_with(" arpeggio")) continue;
    for (const int inversion : {1, 2, 3}) {
      for (const int octaves : {2, 3, 4}) {
        for (const ScaleDirection direction : kDirections) {
          const ScaleResult scale = handbook_scale(
              name, {.octaves = octaves, .direction = direction, .inversion = inversion});
          // Triads have two; those of a diminished seventh are such chords on other roots.
          if (!scale.ok() || name.ends_with("diminished seventh arpeggio")) continue;
          for (const Line& line : scale.score.passages.at(0).lines) {
            INFO(scale.score.passages.at(0).title << ", " << to_string(line.hand));
            CHECK(fingers_without_any(line) == fingers_of(line));
            ++count;
          }
        }
      }
    }
  }
  CHECK(count > 1500);
  CHECK(words_in("E4 G C5 E G C6 E") == "C major arpeggio, first inversion (common practice)");
  CHECK(words_in("Bb5 G E Db Bb4 G E Db Bb3") ==
        "B-flat diminished seventh arpeggio, fingers of the handbook");
}

TEST_CASE("scales in thirds come out whole without a finger given", "[fingering][figures]") {
  std::size_t count = 0;
  for (const std::string& name : handbook_scale_names()) {
    for (int octaves = 1; octaves <= kMostScaleOctaves; ++octaves) {
      for (const ScaleDirection direction : kDirections) {
        const ScaleResult scale = handbook_scale(
            name, {.octaves = octaves, .direction = direction, .notes = ScaleNotes::thirds});
        if (!scale.ok()) continue;
        for (const Line& line : scale.score.passages.at(0).lines) {
          INFO(scale.score.passages.at(0).title << ", " << to_string(line.hand));
          CHECK(fingers_without_any(line) == fingers_of(line));
          ++count;
        }
      }
    }
  }
  CHECK(count > 1500);
  CHECK(words_in("C4+E D+F E+G F+A G+B A+C5 B4+D5 C+E") ==
        "C major scale in thirds (our convention)");
  CHECK(words_in("Eb5+Gb D+F Db+E C+Eb B4+D5 Bb4+Db5 A4+C5 Ab4+B G+Bb Gb+A F+Ab E+G Eb+Gb") ==
        "E-flat chromatic scale in thirds (our convention)");
  CHECK(words_in("C4+E D+F E+G F+A G+B A+C5 B4+D5").empty());
}

TEST_CASE("a part of an arpeggio closes with 5 on one last note only", "[fingering][figures]") {
  const auto fingers = [](std::string_view notes) {
    const std::vector<Figure> figures = figures_in(line_written("1/8 " + std::string(notes)));
    REQUIRE(figures.size() == 1);
    std::string words;
    for (const Finger finger : figures[0].fingers) words += static_cast<char>('0' + finger);
    return words;
  };
  CHECK(fingers("C4 E G C5 E G C6 E") == "12312312");
  CHECK(fingers("E4 G C5 E G C6 E") == "1241245");
  CHECK(fingers("G3 B D4 F G B D5 F") == "12341234");
}

TEST_CASE("octaves on white keys are played with 1 and 5, in every scale", "[fingering][figures]") {
  std::size_t octaves = 0;
  for (const std::string& name : handbook_scale_names()) {
    const ScaleResult scale = handbook_scale(name, {.direction = ScaleDirection::up_and_down});
    const Score bare = without_fingers(scale.score);
    for (Line line : bare.passages.at(0).lines) {
      for (Event& event : line.events) {
        event.notes.push_back(event.notes.front());
        ++event.notes.back().pitch.octave;
      }
      INFO(name << ", " << to_string(line.hand));
      for (const Event& event : completed(line).events) {
        if (is_black_key(midi_number(event.notes[0].pitch))) continue;
        CHECK(event.notes[0].finger == (line.hand == Hand::right ? kThumb : kFifth));
        CHECK(event.notes[1].finger == (line.hand == Hand::right ? kFifth : kThumb));
        ++octaves;
      }
    }
  }
  CHECK(octaves > 1000);
}

TEST_CASE("the difficulty that is told does not count what is usual", "[fingering][figures]") {
  CHECK(difficulty_of(line_written("C4:1+C5:4")).value_or(100) < 10);
  const double usual =
      difficulty_of(line_written("1/8 Eb4:3 F:1 G:2 Ab:3 Bb:4 C:1 D:2 Eb:3")).value_or(0);
  const double other =
      difficulty_of(line_written("1/8 Eb4:2 F:1 G:2 Ab:3 Bb:4 C:1 D:2 Eb:3")).value_or(0);
  CHECK(other < usual);
}

TEST_CASE("given fingers stay, and the rest of a figure follows where it can",
          "[fingering][figures]") {
  const Line variant = completed(line_written("1/8 Eb4:2 F G Ab Bb C D Eb"));
  CHECK(fingers_of(variant) == "2 1 2 3 4 1 2 3");
  const Line five = completed(line_written("1/8 C4 D E F:4 G A B C"));
  CHECK(five.events[3].notes[0].finger == Finger{4});
  CHECK(five.usual.empty());
}

TEST_CASE("figures are found in a row of many, each once", "[fingering][figures]") {
  std::string notes;
  for (int i = 0; i < 40; ++i) notes += "C4 D E F G A B C5 B4 A G F E D ";
  const Line line = line_written("1/16 " + notes + "C4");
  const std::vector<Figure> figures = figures_in(line);
  CHECK(figures.size() == 80);
  for (std::size_t i = 1; i < figures.size(); ++i) {
    CHECK(figures[i].begin + 1 == figures[i - 1].end);
  }
}

TEST_CASE("scales in sixths come out whole without a finger given", "[fingering][figures]") {
  std::size_t count = 0;
  for (const std::string& name : handbook_scale_names()) {
    for (const ScaleDirection direction : kDirections) {
      // The sixth on which a melodic minor turns belongs to the way down, not to the way up.
      const bool turns = direction == ScaleDirection::up_and_down;
      if (turns && name.ends_with("melodic minor")) continue;
      const ScaleResult scale =
          handbook_scale(name, {.octaves = 2, .direction = direction, .notes = ScaleNotes::sixths});
      if (!scale.ok()) continue;
      for (const Line& line : scale.score.passages.at(0).lines) {
        INFO(scale.score.passages.at(0).title << ", " << to_string(line.hand));
        CHECK(fingers_without_any(line) == fingers_of(line));
        ++count;
      }
    }
  }
  CHECK(count > 300);
  CHECK(words_in("C4+A4 D4+B4 E4+C5 F4+D5 G4+E5 A4+F5 B4+G5 C5+A5") ==
        "C major scale in sixths (our convention)");
}

TEST_CASE("broken octaves on white keys have 1 and 5, in every scale", "[fingering][figures]") {
  std::size_t octaves = 0;
  for (const std::string& name : handbook_scale_names()) {
    const ScaleResult scale = handbook_scale(name, {.direction = ScaleDirection::up_and_down});
    const Score bare = without_fingers(scale.score);
    for (Line line : bare.passages.at(0).lines) {
      std::vector<Event> broken;
      for (Event event : line.events) {
        event.onset.reset();
        event.duration.reset();
        broken.push_back(event);
        broken.push_back(event);
        ++broken.back().notes.front().pitch.octave;
      }
      line.events = std::move(broken);
      line.bar_lines.clear();
      INFO(name << ", " << to_string(line.hand));
      const Line fingered = completed(line);
      for (std::size_t i = 0; i < fingered.events.size(); ++i) {
        const Note& note = fingered.events[i].notes.at(0);
        if (is_black_key(midi_number(note.pitch))) continue;
        const bool far = (i % 2 == 0) == (line.hand == Hand::left);
        INFO("note " << i << " of " << fingers_of(fingered));
        CHECK(note.finger == (far ? kFifth : kThumb));
        ++octaves;
      }
    }
  }
  CHECK(octaves > 1000);
  CHECK(words_in("C4 C5 D4 D5 E4 E5") == "broken octaves (common practice)");
  CHECK(words_in("C5 C4 D5 D4") == "broken octaves (common practice)");
  CHECK(figures_in(line_written("1/8 C4 C5")).empty());
  CHECK(figures_in(line_written("1/8 C4 C5 D5 D4")).empty());
}

/// Source of the fingers of trills, tremolos and repeated notes: common practice, no source.
TEST_CASE("a trill has neighbouring fingers but one, no thumb on a black key",
          "[fingering][figures]") {
  CHECK(easiest("1/32 E4 F E F E F E F") == "1 3 1 3 1 3 1 3");
  CHECK(easiest("1/32 F4 E F E F E F E") == "3 1 3 1 3 1 3 1");
  CHECK(easiest("1/32 F#4 G F# G F# G F# G") == "2 3 2 3 2 3 2 3");
  CHECK(easiest("1/32 G4 F# G F# G F# G F# G", "left") == "1 3 1 3 1 3 1 3 1");
  CHECK(words_in("1/32 E4 F E F E F E F") == "trill (common practice)");
  // A slower one only as far as the rest is as easy.
  const std::vector<Figure> slow = figures_in(line_written("1/16 E4 F E F E F E F"));
  REQUIRE(slow.size() == 1);
  CHECK_FALSE(slow[0].is_whole);
  CHECK(slow[0].kind == FigureKind::trill);
  // Seven strokes; a rest; a key that leads elsewhere.
  CHECK(figures_in(line_written("1/32 E4 F E F E F E")).empty());
  CHECK(figures_in(line_written("1/32 E4 F E F r E F E F")).empty());
  CHECK(figures_in(line_written("1/32 E4 F E F E G E F")).empty());
}

TEST_CASE("a tremolo has the fingers that its interval asks for", "[fingering][figures]") {
  CHECK(easiest("1/32 E4 G E G E G E G") == "1 3 1 3 1 3 1 3");
  CHECK(easiest("1/32 F#4 A F# A F# A F# A") == "2 4 2 4 2 4 2 4");
  CHECK(easiest("1/32 C4 F C F C F C F") == "1 4 1 4 1 4 1 4");
  CHECK(easiest("1/32 C4 A4 C4 A4 C4 A4 C4 A4") == "1 5 1 5 1 5 1 5");
  CHECK(easiest("1/32 C4 A4 C4 A4 C4 A4 C4 A4", "left") == "5 1 5 1 5 1 5 1");
  CHECK(words_in("C4 A4 C4 A4 C4 A4 C4 A4") == "tremolo (common practice)");
  CHECK(words_in("C4 C5 C4 C5 C4 C5 C4 C5") == "broken octaves (common practice)");
}

TEST_CASE("a finger that is given speaks against the whole of a trill", "[fingering][figures]") {
  CHECK(figures_in(line_written("1/32 E4 F:2 E F E F E F")).empty());
  CHECK(figures_in(line_written("1/32 E4 F:3 E F E F E F")).size() == 1);
  CHECK(figures_in(line_written("1/16 G4 G G G:2")).empty());
  CHECK(figures_in(line_written("1/16 G4 G G G:1")).size() == 1);
}

TEST_CASE("a note that is struck again quickly changes fingers", "[fingering][figures]") {
  const auto at = [](const std::string& notes) { return figures_in(line_written(notes)); };
  const std::vector<Figure> four = at("1/16 G4 G G G");
  REQUIRE(four.size() == 1);
  CHECK(four[0].fingers == std::vector<Finger>{4, 3, 2, 1});
  CHECK(four[0].kind == FigureKind::repeated_notes);
  const std::vector<Figure> six = at("1/16 G4 G G G G G");
  REQUIRE(six.size() == 1);
  CHECK(six[0].fingers == std::vector<Finger>{3, 2, 1, 3, 2, 1});
  const std::vector<Figure> five = at("1/16 G4 G G G G");
  REQUIRE(five.size() == 1);
  CHECK(five[0].fingers == std::vector<Finger>{4, 3, 2, 1, 4});
  // Four strokes that follow quickly; a rest; chords.
  CHECK(at("1/4 G4 1/16 G G G G").size() == 1);
  CHECK(at("1/16 G4 G G").empty());
  CHECK(at("1/8 G4 G G G").empty());
  CHECK(at("1/16 G4 G G r G").empty());
  CHECK(at("1/16 G4+B G4+B G4+B G4+B").empty());
  CHECK(words_of(four[0], line_written("1/16 G4 G G G"), {}) ==
        "repeated note with changing fingers (common practice)");
}

TEST_CASE("a five-finger figure keeps a finger for each key", "[fingering][figures]") {
  CHECK(easiest("C4 E D F E G F D E C D F E") == "1 3 2 4 3 5 4 2 3 1 2 4 3");
  CHECK(easiest("A4 F# G E F# D E G F# A G E", "left") == "1 3 2 4 3 5 4 2 3 1 2 4");
  CHECK(words_in("C4 E D F E G F D E C D F E") == "five-finger figure (common practice)");
  // Eleven notes; the thumb on a black key; four keys; chromatic ones; a key struck again.
  CHECK(figures_in(line_written("1/8 C4 E D F E G F D E C D")).empty());
  CHECK(figures_in(line_written("1/8 Eb4 G F Ab G Bb Ab F G Eb F Ab G")).empty());
  CHECK(figures_in(line_written("1/8 C4 E D F E F D F E C D F E")).empty());
  CHECK(figures_in(line_written("1/8 C4 D C# D# D E D# C# D C C# D# D")).empty());
  CHECK(figures_in(line_written("1/8 C4 E D F E G G F D E C D F E")).empty());
}

TEST_CASE("a five-finger figure leaves the notes of a scale to it", "[fingering][figures]") {
  const std::vector<Figure> figures =
      figures_in(line_written("1/8 G4 E F D E C D F E G F D C D E F G A B C5"));
  REQUIRE(figures.size() == 2);
  CHECK(figures[0].kind == FigureKind::five_fingers);
  CHECK(figures[0].end == figures[1].begin);
  CHECK(figures[1].kind == FigureKind::run);
  CHECK(figures[1].is_whole);
}

}  // namespace fingerturn
