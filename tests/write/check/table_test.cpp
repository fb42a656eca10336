#include "catch.hpp"
#include "fingerturn/check.hpp"
#include "write/check/counted_files.hpp"

#include <algorithm>
#include <string>
#include <vector>

/// The table of what `check` counted.
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

/// The table alone, without legend and caution.
std::string table_of(const std::vector<FileCounts>& files, int columns = 80) {
  const std::string text = write_counts(files, all_of(files), columns);
  return text.substr(0, text.find("\nlegend\n"));
}

}  // namespace

TEST_CASE("the table has a row for each file and one for all") {
  FileCounts broken;
  broken.source = "etudes/broken.xml";
  broken.error = "no";
  CHECK(table_of({counts_named("etudes/one.passage", 20, 20), broken,
                  counts_named("etudes/sub/two.mxl", 100, 5)}) ==
        "etudes/     events fingers prep single double cross\n"
        "one.passage     20    100%    0      0      0     0\n"
        "broken.xml  could not be read\n"
        "sub/two.mxl    100      5%    0      0      0     0\n"
        "2 files        120     21%    0      0      0     0\n");
}

TEST_CASE("one file needs no row for all") {
  CHECK(table_of({counts_named("one.passage", 2, 1)}) ==
        "            events fingers prep single double cross\n"
        "one.passage      2     50%    0      0      0     0\n");
}

TEST_CASE("a name that is too long for the table stands above its numbers") {
  CHECK(table_of({counts_named("a/short", 1, 1), counts_named("a/" + std::string(40, 'x'), 1, 1)},
                 60) ==
        "a/      events fingers prep single double cross\n"
        "short        1    100%    0      0      0     0\n"
        "xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx\n"
        "             1    100%    0      0      0     0\n"
        "2 files      2    100%    0      0      0     0\n");
}

TEST_CASE("columns that do not fit beside one another stand in tables below one another") {
  const FileCounts broken{"a/broken", "no", {}};
  FileCounts file = counts_named("a/short", 12, 12);
  file.counts.double_rotations = 11;
  CHECK(table_of({file, broken, counts_named("a/" + std::string(30, 'x'), 1, 1)}, 36) ==
        "a/      events fingers prep\n"
        "short       12    100%    0\n"
        "broken  could not be read\n"
        "xxxxxxxxxxxxxxxxxxxxxxxxxxxxxx\n"
        "             1    100%    0\n"
        "2 files     13    100%    0\n"
        "\n"
        "a/      single double cross\n"
        "short        0     11     0\n"
        "xxxxxxxxxxxxxxxxxxxxxxxxxxxxxx\n"
        "             0      0     0\n"
        "2 files      0     11     0\n");
}

TEST_CASE("only all is 100% and only none is 0%") {
  const auto share = [](std::size_t fingered, std::size_t events) {
    const std::string text = table_of({counts_named("x", events, fingered)});
    std::string row = text.substr(text.find('\n') + 1);
    row = row.substr(0, row.find("    0", 20));
    return row.substr(row.find_last_of(' ') + 1);
  };
  CHECK(share(999, 1000) == "99%");
  CHECK(share(1, 1000) == "1%");
  CHECK(share(1000, 1000) == "100%");
  CHECK(share(0, 1000) == "0%");
  CHECK(share(2, 3) == "67%");
  CHECK(share(0, 0) == "-");
}

TEST_CASE("columns that count nothing in any file are left out, wide numbers are kept apart") {
  FileCounts file = counts_named("x", 1234567, 1234567);
  file.counts.preparatory = 1234567;
  file.counts.level_events = 1;
  file.counts.undetermined = 2;
  file.counts.watch.info = 3;
  file.counts.watch.strain = 123456789;
  CHECK(table_of({file}) ==
        "        events fingers    prep single double level  ? cross info    strain\n"
        "x      1234567    100% 1234567      0      0     1  2     0    3 123456789\n");
}

TEST_CASE("the counts carry their legend and the caution, and keep to the width") {
  std::vector<FileCounts> files{counts_named("etudes/a.passage", 10, 9),
                                counts_named("etudes/ten-minutes.passage", 1200, 9),
                                counts_named("etudes/x.musicxml", 10, 9)};
  files[1].error = "no";
  for (std::size_t* count :
       {&files[0].counts.level_events, &files[0].counts.undetermined, &files[2].counts.watch.info,
        &files[2].counts.watch.caution, &files[2].counts.watch.strain}) {
    *count = 1200;
  }
  for (const int columns : {32, 40, 44, 48, 60, 80, 120}) {
    CAPTURE(columns);
    const std::string text = write_counts(files, all_of(files), columns);
    CHECK(text.find("\nlegend\nevents = ") != std::string::npos);
    CHECK(text.find("\ncaution\n") != std::string::npos);
    std::size_t widest = 0;
    for (std::size_t begin = 0; begin < text.size();) {
      const std::size_t end = text.find('\n', begin);
      widest = std::max(widest, end - begin);
      begin = end + 1;
    }
    CHECK(widest <= static_cast<std::size_t>(columns));
  }
  CHECK(write_counts(files, all_of(files), -5) == write_counts(files, all_of(files), 32));
}
