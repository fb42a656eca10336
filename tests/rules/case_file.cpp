#include "rules/case_file.hpp"

#include <algorithm>
#include <array>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>
#include <sstream>
#include <utility>

namespace fingerturn {
namespace {

constexpr std::array<std::string_view, 26> kKnownRows{
    "case",  "source",  "notes",    "kinds",  "play",  "prepare", "swings", "rules", "crossing",
    "basis", "shows",   "remark",   "author", "title", "number",  "year",   "place", "quoted",
    "keys",  "pitches", "warnings", "watch",  "carry", "in-out",  "arcs",   "rates"};
constexpr std::array<std::string_view, 5> kPublication{"author", "title", "year", "place",
                                                       "quoted"};
constexpr std::array<std::string_view, 3> kQuotations{"read", "through a digest", "from memory"};
constexpr std::string_view kNoPublication = "common practice, no source";

template <typename Range>
bool contains(const Range& range, std::string_view wanted) {
  return std::find(range.begin(), range.end(), wanted) != range.end();
}

bool all_digits(std::string_view text) {
  return !text.empty() && text.find_first_not_of("0123456789") == std::string_view::npos;
}

bool is_numbered_row(std::string_view name) {
  constexpr std::array<std::string_view, 2> kOpenings{"reason ", "finding "};
  return std::ranges::any_of(kOpenings, [name](std::string_view opening) {
    return name.starts_with(opening) && all_digits(name.substr(opening.size()));
  });
}

std::string trimmed(std::string_view text) {
  const std::size_t begin = text.find_first_not_of(" \t\r");
  if (begin == std::string_view::npos) return {};
  return std::string(text.substr(begin, text.find_last_not_of(" \t\r") + 1 - begin));
}

/// Takes a file apart into cases and rows.
class CaseReader {
 public:
  CaseReader(std::string file_name, CaseFile& file) : name_(std::move(file_name)), file_(file) {}

  void read(const std::string& text) {
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
      ++number_;
      read_line(line);
    }
  }

 private:
  void read_line(const std::string& line) {
    if (line.starts_with('#')) return;
    const std::string content = trimmed(line);
    if (content.empty()) {
      open_ = false;
    } else if (line.front() == ' ') {
      continue_row(content);
    } else {
      add_row(content);
    }
  }

  void continue_row(const std::string& content) {
    if (!open_) return fail("goes on with a row, but there is none above it");
    file_.cases.back().rows.back().value += ' ' + content;
  }

  void add_row(const std::string& content) {
    const std::size_t colon = content.find(':');
    if (colon == std::string_view::npos) return fail("expected a name, a colon and a value");
    CaseRow row{trimmed(content.substr(0, colon)), trimmed(content.substr(colon + 1))};
    if (!contains(kKnownRows, row.name) && !is_numbered_row(row.name)) {
      return fail("unknown row \"" + row.name + "\"");
    }
    if (row.value.empty()) return fail("nothing after \"" + row.name + "\"");
    if (!open_) file_.cases.push_back({place(), {}});
    open_ = true;
    if (file_.cases.back().has(row.name)) return fail("a second row \"" + row.name + "\"");
    file_.cases.back().rows.push_back(std::move(row));
  }

  [[nodiscard]] std::string place() const { return name_ + ":" + std::to_string(number_); }
  void fail(const std::string& fault) { file_.faults.push_back(place() + ": " + fault); }

  std::string name_;
  CaseFile& file_;
  std::size_t number_ = 0;
  bool open_ = false;
};

/// Looks whether a case is complete.
class CaseCheck {
 public:
  CaseCheck(const Case& checked, CaseFile& file) : case_(checked), file_(file) {}

  void check(Collection collection) {
    require("case");
    check_what_it_holds();
    if (collection == Collection::rules) {
      require("source");
      for (const std::string_view name : kPublication) forbid(name, "a case of a rule");
    } else if (case_.has("source")) {
      check_unpublished();
    } else {
      check_published();
    }
  }

 private:
  void check_what_it_holds() {
    if (!case_.has("pitches")) {
      for (const std::string_view name : {"notes", "kinds", "play"}) require(name);
      forbid("keys", "a case with notes");
      return;
    }
    require("keys");
    for (const std::string_view name :
         {"notes", "kinds", "play", "prepare", "swings", "crossing", "rules", "basis", "shows",
          "warnings", "carry", "in-out", "arcs", "rates", "watch"}) {
      forbid(name, "a case with pitches");
    }
  }

  void check_unpublished() {
    if (case_.row("source") != kNoPublication) {
      fail("a published case has author, title, year, place and quoted in place of a source");
    }
    for (const std::string_view name : kPublication) forbid(name, "a case with no source");
    forbid("number", "a case with no source");
  }

  void check_published() {
    for (const std::string_view name : kPublication) require(name);
    const std::string_view year = case_.row("year");
    if (!year.empty() && (!all_digits(year) || year.size() != 4)) fail("expected a year");
    const std::string_view quoted = case_.row("quoted");
    if (!quoted.empty() && !contains(kQuotations, quoted)) {
      fail(R"(quoted is "read", "through a digest" or "from memory")");
    }
  }

  void require(std::string_view name) {
    if (!case_.has(name)) fail(R"(no row ")" + std::string(name) + '"');
  }
  void forbid(std::string_view name, const std::string& where) {
    if (case_.has(name)) fail("row \"" + std::string(name) + "\" in " + where);
  }
  void fail(const std::string& fault) { file_.faults.push_back(case_.place + ": " + fault); }

  const Case& case_;
  CaseFile& file_;
};

void check_titles(CaseFile& file) {
  std::set<std::string_view> titles;
  for (const Case& each : file.cases) {
    const std::string_view title = each.row("case");
    if (title.empty() || titles.insert(title).second) continue;
    file.faults.push_back(each.place + ": a second case with this title");
  }
}

}  // namespace

std::string_view Case::row(std::string_view name) const {
  const auto found = std::find_if(rows.begin(), rows.end(),
                                  [name](const CaseRow& row) { return row.name == name; });
  return found == rows.end() ? std::string_view{} : found->value;
}

CaseFile read_cases(const std::string& file_name, const std::string& text, Collection collection) {
  CaseFile file;
  CaseReader(file_name, file).read(text);
  for (const Case& each : file.cases) CaseCheck(each, file).check(collection);
  check_titles(file);
  if (file.cases.empty()) file.faults.push_back(file_name + ": no cases");
  return file;
}

CaseFile read_case_folder(const std::string& folder, Collection collection) {
  CaseFile all;
  std::set<std::filesystem::path> paths;
  const std::filesystem::path root = std::filesystem::path(FINGERTURN_TESTS_DIR) / folder;
  for (const auto& entry : std::filesystem::directory_iterator(root)) {
    if (entry.path().extension() == ".cases") paths.insert(entry.path());
  }
  for (const std::filesystem::path& path : paths) {
    std::ifstream stream(path, std::ios::binary);
    const std::string text{std::istreambuf_iterator<char>(stream), {}};
    CaseFile file = read_cases(path.filename().string(), text, collection);
    std::move(file.cases.begin(), file.cases.end(), std::back_inserter(all.cases));
    std::move(file.faults.begin(), file.faults.end(), std::back_inserter(all.faults));
  }
  if (all.cases.empty()) all.faults.push_back(folder + ": no files of cases");
  return all;
}

std::vector<std::string> words_of_row(std::string_view value) {
  std::istringstream stream{std::string(value)};
  std::vector<std::string> words;
  for (std::string word; stream >> word;) {
    if (word != "|") words.push_back(word);
  }
  return words;
}

}  // namespace fingerturn
