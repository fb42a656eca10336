#include "catch.hpp"
#include "fingerturn/fingerturn.hpp"
#include "read/musicxml/made_container.hpp"

#include <string>

/// Packed MusicXML.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

std::string container_naming(const std::string& path, const std::string& type) {
  return "<?xml version=\"1.0\"?><container><rootfiles><rootfile full-path=\"cover.pdf\" "
         "media-type=\"application/pdf\"/><rootfile full-path=\"" +
         path + "\"" + type + "/></rootfiles></container>";
}

const std::string kContainerName = "META-INF/container.xml";
const std::string kContainer = container_naming("music/score.xml", "");
const std::string kScore =
    R"(<?xml version="1.0" encoding="ISO-8859-1"?><score-partwise><movement-title>)"
    "Caf\xE9"
    R"(</movement-title><part-list><score-part id="P1"><part-name>Piano</part-name></score-part>)"
    R"(</part-list><part id="P1"><measure number="1"><note><pitch><step>C</step><octave>4</octave>)"
    R"(</pitch><duration>1</duration><notations><technical><fingering>1</fingering></technical>)"
    R"(</notations></note></measure></part></score-partwise>)";

ReadResult read_packed(const std::string& bytes) { return read(Source("score.mxl", bytes)); }

/// The first message, without the place and the line that it shows.
std::string message_of(const ReadResult& result) {
  return result.diagnostics.kept.empty() ? "" : result.diagnostics.kept.front().message;
}

}  // namespace

TEST_CASE("mxl: the root file that the container names is read") {
  for (const std::string type : {"", " media-type=\"application/vnd.recordare.musicxml+xml\""}) {
    const PackedFiles files{{kContainerName, container_naming("music/score.xml", type)},
                            {"other.xml", "<opus/>"},
                            {"music/score.xml", kScore}};
    const Source source("score.mxl", packed(files));
    const ReadResult result = read(source);
    CHECK(render(text_read(result, source), result.diagnostics) == "");
    const Passage& passage = result.score.passages.at(0);
    CHECK(passage.title == "Caf\xC3\xA9");
    const Note& note = passage.lines.at(0).events.at(0).notes.at(0);
    CHECK(note.finger == Finger{1});
    CHECK(text_read(result, source).text_of(note.span) == "<note");
    CHECK(text_read(result, source).text().find("encoding=\"UTF-8\"") != std::string::npos);
  }
}

TEST_CASE("mxl: the name of the root file is found in the letters of old systems too") {
  const std::string container = container_naming("Caf\xC3\xA9.xml", "");
  for (const std::string name : {"Caf\xC3\xA9.xml", "Caf\x82.xml"}) {
    CHECK(read_packed(packed({{kContainerName, container}, {name, kScore}})).ok());
  }
  CHECK_FALSE(read_packed(packed({{kContainerName, container}, {"Cafe.xml", kScore}})).ok());
}

TEST_CASE("mxl: a container that lacks something") {
  CHECK(message_of(read_packed(packed({{"music/score.xml", kScore}}))) ==
        "expected \"META-INF/container.xml\" in the container, found none");
  CHECK(message_of(read_packed(packed({{kContainerName, kContainer}}))) ==
        "expected \"music/score.xml\" in the container, found none");
  CHECK(message_of(read_packed(packed({{kContainerName, "<container/>"}, {"a.xml", kScore}}))) ==
        "expected META-INF/container.xml to name a MusicXML root file, found none");
  CHECK(message_of(read_packed("PK\x03\x04 and no more")) ==
        "expected a zip container, found that this one is broken");
}

TEST_CASE("mxl: a container that is broken in the middle") {
  std::string bytes = packed({{kContainerName, kContainer}, {"music/score.xml", kScore}});
  const std::size_t score = bytes.find("music/score.xml");
  REQUIRE(score != std::string::npos);
  for (std::size_t i = 0; i < 40; ++i) bytes[score + 30 + i] = '\x55';
  const ReadResult result = read_packed(bytes);
  CHECK_FALSE(result.ok());
  CHECK(message_of(result) ==
        "expected \"music/score.xml\" to be whole and without a password, found that it cannot "
        "be unpacked");
}

TEST_CASE("mxl: a file with a password, or of another size than it says, is broken") {
  const std::string whole = packed({{kContainerName, kContainer}, {"music/score.xml", kScore}});
  // Where it stands before the name: at the file itself, and in the directory (APPNOTE.TXT, 4.3.7
  // and 4.3.12).
  struct Change {
    std::size_t at_file;
    std::size_t in_directory;
    char bits;
  };
  for (const auto [at_file, in_directory, bits] :
       {Change{24, 38, '\x01'}, Change{8, 22, '\x01'}, Change{8, 22, '\x02'}}) {
    std::string bytes = whole;
    bytes[bytes.find("music/score.xml") - at_file] ^= bits;
    bytes[bytes.rfind("music/score.xml") - in_directory] ^= bits;
    CAPTURE(at_file, bits);
    CHECK(message_of(read_packed(bytes)) ==
          "expected \"music/score.xml\" to be whole and without a password, found that it cannot "
          "be unpacked");
  }
}

TEST_CASE("mxl: what unpacks to very many times its size is refused") {
  const std::string bomb(std::size_t{64} * 1024 * 1024, ' ');
  const ReadResult result =
      read_packed(packed({{kContainerName, kContainer}, {"music/score.xml", bomb}}));
  REQUIRE_FALSE(result.ok());
  CHECK(result.diagnostics.kept.front().code == "too-large");
}

TEST_CASE("mxl: the container names its score in a few words") {
  const std::string words = kContainer + std::string(std::size_t{2} * 1024 * 1024, ' ');
  const ReadResult result =
      read_packed(packed({{kContainerName, words}, {"music/score.xml", kScore}}));
  REQUIRE_FALSE(result.ok());
  CHECK(result.diagnostics.kept.front().code == "too-large");
}

TEST_CASE("mxl: a container of more files than any score has is refused") {
  PackedFiles files{{kContainerName, kContainer}, {"music/score.xml", kScore}};
  while (files.size() < 1000) files.emplace_back("picture" + std::to_string(files.size()), "");
  CHECK(read_packed(packed(files)).ok());
  files.emplace_back("one more", "");
  CHECK(message_of(read_packed(packed(files))) ==
        "expected a container of a score, found one of very many files");
}

TEST_CASE("mxl: a container within a container is no score") {
  const std::string inner = packed({{kContainerName, kContainer}, {"music/score.xml", kScore}});
  const ReadResult result =
      read_packed(packed({{kContainerName, kContainer}, {"music/score.xml", inner}}));
  REQUIRE_FALSE(result.ok());
  CHECK(result.diagnostics.kept.front().code == "xml");
}
