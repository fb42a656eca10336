#include "catch.hpp"
#include "fingerturn/fingerturn.hpp"
#include "score/file_reading.hpp"

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <set>
#include <string>
#include <utility>
#include <vector>

/// The reports of every passage in demo/, byte for byte as they stand in tests/golden/. After a
/// change that is meant, this writes them anew, to be looked at before they are committed:
///
///     FINGERTURN_REWRITE_GOLDEN=1 build/tests/fingerturn_tests "golden*"
using namespace fingerturn;
using namespace fingerturn::tests;

namespace {

namespace files = std::filesystem;

const files::path kDemo = files::path(FINGERTURN_SOURCE_DIR) / "demo";
const files::path kGolden = files::path(FINGERTURN_TESTS_DIR) / "golden";

bool rewriting() {
  const char* const wanted = std::getenv("FINGERTURN_REWRITE_GOLDEN");
  return wanted != nullptr && std::string(wanted) == "1";
}

/// What a golden file is called, and what should stand in it.
struct Golden {
  std::string file_name;
  std::string text;
};

/// Each passage with its missing fingers filled in, beside what is suggested without any.
std::vector<Golden> goldens_of_comparison(const std::string& name, const Score& score) {
  const AnalysedScore given = with_difficulties(AnalysedScore("given", with_suggestions(score)));
  const AnalysedScore suggested =
      with_difficulties(AnalysedScore("suggested", with_suggestions(without_fingers(score))));
  const std::vector<NamedPassage> fingerings{{given.name(), given[0]},
                                             {suggested.name(), suggested[0]}};
  REQUIRE_FALSE(notes_differ(fingerings).has_value());
  const std::vector<Comparison> reports{compare(score.passages.at(0).title, fingerings)};
  return {{name + ".compared.txt", write_comparison_text(reports, {})},
          {name + ".compared.narrow.txt", write_comparison_text(reports, {.columns = 40})},
          {name + ".compared.json", write_comparison_json(reports)}};
}

std::vector<Golden> goldens_of(const files::path& passage) {
  const std::string source_name = "demo/" + passage.filename().string();
  const Source source(source_name, text_of_file(passage));
  const ReadResult result = read(source);
  REQUIRE(render(source, result.diagnostics) == "");
  const AnalysedScore report(source_name, result.score);
  const std::string name = passage.stem().string();
  std::vector<Golden> goldens{
      {name + ".txt", write_text(report, {})},
      {name + ".narrow.txt", write_text(report, {.columns = 48})},
      {name + ".ascii-detail.txt", write_text(report, {.ascii = true, .detail = true})},
      {name + ".trace.txt", write_text(report, {.trace = true})},
      {name + ".html", write_html(report)},
      {name + ".svg", write_svg(report)},
      {name + ".md", write_markdown(report, {})},
      {name + ".json", write_json(report)},
      {name + ".jsonl", write_jsonl(report)},
      {name + ".passage", write_passage(result.score)},
      {name + ".bar-2.passage", write_excerpt(result.score, excerpt(result.score, {2, 2}))}};
  if (form_of(source) == SourceForm::musicxml) {
    goldens.push_back({name + ".musicxml", write_musicxml(source, report, {})});
    goldens.push_back({name + ".words.musicxml", write_musicxml(source, report, {.words = true})});
  }
  for (Golden& golden : goldens_of_comparison(name, result.score)) {
    goldens.push_back(std::move(golden));
  }
  return goldens;
}

/// What `check` says of all demo passages together.
std::vector<Golden> goldens_of_check(std::vector<files::path> passages) {
  std::sort(passages.begin(), passages.end());
  Golden text{"check.txt", ""};
  Golden lines{"check.jsonl", ""};
  std::vector<FileCounts> rows;
  AllCounts all;
  for (const files::path& passage : passages) {
    const Source source("demo/" + passage.filename().string(), text_of_file(passage));
    const ReadResult result = read(source);
    const FileCheck found = check(source, result, analyse(result.score), std::nullopt);
    text.text += write_findings(found, std::nullopt);
    lines.text += write_check_jsonl(found);
    all.add(found.file);
    rows.push_back(found.file);
  }
  text.text += '\n' + write_counts(rows, all, 80);
  lines.text += write_check_jsonl(all);
  return {text, lines};
}

void write_golden(const Golden& golden) {
  std::ofstream stream(kGolden / golden.file_name, std::ios::binary | std::ios::trunc);
  stream << golden.text;
  REQUIRE(stream.flush().good());
}

/// The first line in which two texts differ, for a message that can be read.
std::string first_difference(const std::string& found, const std::string& expected) {
  std::size_t line = 1;
  std::size_t begin = 0;
  for (std::size_t i = 0; i < std::min(found.size(), expected.size()); ++i) {
    if (found[i] != expected[i]) break;
    if (found[i] == '\n') {
      ++line;
      begin = i + 1;
    }
  }
  return "line " + std::to_string(line) +
         "\n  now:    " + found.substr(begin, found.find('\n', begin) - begin) +
         "\n  golden: " + expected.substr(begin, expected.find('\n', begin) - begin);
}

void check_golden(const Golden& golden) {
  INFO("tests/golden/" << golden.file_name);
  if (rewriting()) write_golden(golden);
  const files::path path = kGolden / golden.file_name;
  if (!files::exists(path)) FAIL_CHECK("is missing");
  const std::string expected = files::exists(path) ? text_of_file(path) : "";
  INFO(first_difference(golden.text, expected));
  CHECK((golden.text == expected));
}

}  // namespace

TEST_CASE("golden reports of the demo passages") {
  std::vector<files::path> passages = files_below(kDemo, ".passage");
  REQUIRE_FALSE(passages.empty());
  for (const files::path& score : files_below(kDemo, ".musicxml")) passages.push_back(score);
  std::set<std::string> names;
  for (const files::path& passage : passages) {
    for (const Golden& golden : goldens_of(passage)) {
      check_golden(golden);
      names.insert(golden.file_name);
    }
  }
  for (const Golden& golden : goldens_of_check(passages)) {
    check_golden(golden);
    names.insert(golden.file_name);
  }
  for (const auto& entry : files::directory_iterator(kGolden)) {
    INFO("tests/golden/" << entry.path().filename().string() << " belongs to no demo passage");
    CHECK(names.contains(entry.path().filename().string()));
  }
}
