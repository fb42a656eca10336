#include "catch.hpp"
#include "fingerturn/read.hpp"
#include "growth/growing_score.hpp"
#include "growth/growth.hpp"
#include "growth/work.hpp"
#include "read/musicxml/made_container.hpp"
#include "score/file_reading.hpp"

#include <filesystem>
#include <functional>
#include <regex>
#include <set>
#include <string>
#include <utility>
#include <vector>

/// Reading MusicXML takes time in proportion to the score, whatever stands in it very many times.
/// The scores hold every element and attribute that the reader looks at, and each is made many:
/// alone, and together with each other.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

namespace files = std::filesystem;

struct Form {
  std::string file;
  bool backwards = false;
};

std::string grown_file(const std::string& name) {
  return text_of_file(files::path(FINGERTURN_TESTS_DIR) / "growth" / name);
}

std::uint64_t steps_of_score(const std::string& text) {
  const Source source("score.musicxml", text);
  return work_of([&source] { read_musicxml(source); }).steps;
}

std::uint64_t steps_of_container(const std::string& text) {
  const Source source(
      "score.mxl", packed({{"META-INF/container.xml", text}, {"score.xml", "<score-partwise/>"}}));
  return work_of([&source] { read_musicxml(source); }).steps;
}

using StepsOfText = std::uint64_t (*)(const std::string& text);

/// Tells the things that take more than their share, each in a line.
std::string out_of_proportion(const Form& form, StepsOfText steps_of) {
  const GrowingScore score(grown_file(form.file), form.backwards);
  std::string names;
  for (std::size_t thing = 0; thing < score.things(); ++thing) {
    const auto steps = [&](std::size_t times) {
      return steps_of(score.text({thing, times}, {thing, 1}));
    };
    if (!grows_in_proportion(steps)) names += score.name(thing) + "\n";
  }
  return names;
}

/// The same of pairs of things.
std::string pairs_out_of_proportion(const Form& form, StepsOfText steps_of) {
  const GrowingScore score(grown_file(form.file), form.backwards);
  std::vector<std::uint64_t> apart;
  for (std::size_t thing = 0; thing < score.things(); ++thing) {
    apart.push_back(steps_of(score.text({thing, kTogether}, {thing, 1})));
  }
  const std::uint64_t once = steps_of(score.text({0, 1}, {0, 1}));
  std::string names;
  for (std::size_t one = 0; one < score.things(); ++one) {
    for (std::size_t other = 0; other < one; ++other) {
      const auto steps = [&](std::size_t times, std::size_t other_times) {
        return steps_of(score.text({one, times}, {other, other_times}));
      };
      if (meet_in_proportion(steps, {once, apart[one], apart[other]})) continue;
      names += score.name(one) + " and " + score.name(other) + "\n";
    }
  }
  return names;
}

/// The names by which the reader's sources ask for elements and attributes.
std::set<std::string> names_in_sources() {
  const std::regex asked(R"re((?:child|children|attribute)\("([^"]+)"\)|name == "([^"]+)")re");
  std::set<std::string> names;
  const files::path folder = files::path(FINGERTURN_SOURCE_DIR) / "src/read/musicxml";
  for (const files::path& path : files_below(folder, ".cpp")) {
    const std::string text = text_of_file(path);
    for (std::sregex_iterator match(text.begin(), text.end(), asked), end; match != end; ++match) {
      names.insert((*match)[1].str() + (*match)[2].str());
    }
  }
  return names;
}

/// A score for so many keyboards, each of which is played alone, with a title so long.
std::string many_keyboards(std::size_t count, std::size_t title) {
  std::string list;
  std::string parts;
  for (std::size_t i = 0; i < count; ++i) {
    const std::string number = std::to_string(i);
    list += "<score-part id=\"" + number + "\"><part-name>Organ</part-name></score-part>";
    parts += "<part id=\"" + number +
             "\"><measure><attributes><staves>2</staves></attributes></measure></part>"
             "<part id=\"left out " +
             number + "\"><measure/></part>";
  }
  return "<score-partwise><part-list>" + list + "</part-list>" + parts + "<movement-title>" +
         std::string(title, ' ') + "</movement-title></score-partwise>";
}

struct WrittenKey {
  std::string pitch;  ///< as an element
  int duration = 0;
  int voice = 0;
  int staff = 0;
};

std::string note_of(const WrittenKey& key, const std::string& chord, const std::string& finger) {
  return "<note>" + chord + key.pitch + "<duration>" + std::to_string(key.duration) +
         "</duration><voice>" + std::to_string(key.voice) + "</voice><staff>" +
         std::to_string(key.staff) + "</staff><notations><technical><fingering>" + finger +
         "</fingering></technical></notations></note>";
}

/// A chord of one key so many times.
std::string chord_of(const WrittenKey& key, const std::string& finger, std::size_t times) {
  std::string chord = note_of(key, "", finger);
  for (std::size_t i = 1; i < times; ++i) chord += note_of(key, "<chord/>", finger);
  return chord;
}

std::string on_two_staves(const std::string& notes) {
  return "<score-partwise><part-list><score-part id=\"1\"><part-name>Piano</part-name>"
         "</score-part></part-list><part id=\"1\"><measure><attributes><divisions>4</divisions>"
         "<staves>2</staves></attributes>" +
         notes + "</measure></part></score-partwise>";
}

constexpr const char* kE5 = "<pitch><step>E</step><octave>5</octave></pitch>";
constexpr const char* kC5 = "<pitch><step>C</step><octave>5</octave></pitch>";
constexpr const char* kC4 = "<pitch><step>C</step><octave>4</octave></pitch>";
constexpr const char* kB3 = "<pitch><step>B</step><octave>3</octave></pitch>";
constexpr const char* kF2 = "<pitch><step>F</step><octave>2</octave></pitch>";

/// Two voices of one staff whose fingers may not go together, while the other hand is idle.
std::string two_full_voices(std::size_t times) {
  return on_two_staves(chord_of({kE5, 4, 1, 1}, "5", times) +
                       "<backup><duration>4</duration></backup>" +
                       chord_of({kC5, 4, 2, 1}, "1", times));
}

/// A voice that the left hand cannot take and leaves to the right, and that goes on with a full
/// chord.
std::string full_voice_left_to_other(std::size_t times) {
  return on_two_staves(note_of({kC4, 1, 5, 2}, "", "1") + chord_of({kB3, 3, 5, 2}, "1", times) +
                       "<backup><duration>4</duration></backup>" +
                       note_of({kF2, 4, 6, 2}, "", "5"));
}

PackedFiles many_files(std::size_t count) {
  PackedFiles files;
  while (files.size() < count) files.emplace_back("picture" + std::to_string(files.size()), "");
  return files;
}

}  // namespace

TEST_CASE("growth: musicxml: the scores hold all that the reader looks at") {
  std::set<std::string> held;
  for (const std::string file : {"by_parts.xml", "by_measures.xml", "container.xml"}) {
    held.merge(GrowingScore(grown_file(file), false).names());
  }
  const std::set<std::string> asked = names_in_sources();
  CHECK(asked.size() > 60);
  for (const std::string& name : asked) {
    INFO(name);
    CHECK(held.contains(name));
  }
}

TEST_CASE("growth: musicxml: very many of each thing") {
  for (const bool backwards : {false, true}) {
    CHECK(out_of_proportion({"by_parts.xml", backwards}, steps_of_score) == "");
    CHECK(out_of_proportion({"by_measures.xml", backwards}, steps_of_score) == "");
    CHECK(out_of_proportion({"container.xml", backwards}, steps_of_container) == "");
  }
}

TEST_CASE("growth: musicxml: very many of two things, in a score by parts") {
  CHECK(pairs_out_of_proportion({"by_parts.xml", false}, steps_of_score) == "");
}

TEST_CASE("growth: musicxml: very many of two things, in a score by parts backwards") {
  CHECK(pairs_out_of_proportion({"by_parts.xml", true}, steps_of_score) == "");
}

TEST_CASE("growth: musicxml: very many of two things, in a score by measures and in a container") {
  for (const bool backwards : {false, true}) {
    CHECK(pairs_out_of_proportion({"by_measures.xml", backwards}, steps_of_score) == "");
    CHECK(pairs_out_of_proportion({"container.xml", backwards}, steps_of_container) == "");
  }
}

TEST_CASE("growth: musicxml: very many keyboards") {
  constexpr std::size_t kFew = kMostKeyboards / 8;
  CHECK(grows_in_proportion(
      [](std::size_t times) { return steps_of_score(many_keyboards(times, 0)); }, kFew));
  CHECK(grows_in_proportion(
      [](std::size_t times) { return steps_of_score(many_keyboards(times, 100 * times)); }, kFew));
}

TEST_CASE("growth: musicxml: very many notes at once of which the hands are to be chosen") {
  CHECK(grows_in_proportion(
      [](std::size_t times) { return steps_of_score(two_full_voices(times)); }));
  CHECK(grows_in_proportion(
      [](std::size_t times) { return steps_of_score(full_voice_left_to_other(times)); }));
}

TEST_CASE("growth: musicxml: one keyboard more than are read") {
  const auto read_keyboards = [](std::size_t count) {
    return read_musicxml(Source("score.musicxml", many_keyboards(count, 0)));
  };
  CHECK(read_keyboards(kMostKeyboards).ok());
  const ReadResult result = read_keyboards(kMostKeyboards + 1);
  REQUIRE(result.diagnostics.errors == 1);
  CHECK(result.diagnostics.kept[0].code == "too-large");
  CHECK(result.diagnostics.kept[0].message ==
        "expected a score for at most 999 keyboards, found 1000");
}

TEST_CASE("growth: musicxml: very many files in a container") {
  constexpr std::size_t kFew = 100;  // eight times as many are still let through
  CHECK(grows_in_proportion(
      [](std::size_t times) {
        const Source source("score.mxl", packed(many_files(times)));
        return work_of([&source] { read_musicxml(source); }).steps;
      },
      kFew));
}
