#include "write/page/music_to_set.hpp"

#include "score/file_reading.hpp"

#include <filesystem>

namespace fingerturn::tests {
namespace {

namespace files = std::filesystem;

void add_files(const files::path& folder, std::vector<MusicToSet>& found) {
  if (!files::exists(folder)) return;
  for (const char* extension : {".passage", ".musicxml"}) {
    for (const files::path& path : files_below(folder, extension)) {
      const Source source(path.filename().string(), text_of_file(path));
      const bool is_notation = path.extension() == ".passage";
      ReadResult read = is_notation ? read_notation(source) : read_musicxml(source);
      if (!read.ok()) continue;
      found.push_back(
          {source.name(), AnalysedScore(source.name(), with_suggestions(std::move(read.score)))});
    }
  }
}

}  // namespace

std::vector<MusicToSet> music_to_set() {
  std::vector<MusicToSet> found;
  add_files(files::path(FINGERTURN_SOURCE_DIR) / "demo", found);
  add_files(files::path(FINGERTURN_TESTS_DIR) / "write/page/music", found);
  add_files(corpus_folder(), found);
  return found;
}

}  // namespace fingerturn::tests
