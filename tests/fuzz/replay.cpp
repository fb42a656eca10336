#include "target.hpp"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>
#include <vector>

/// Runs kept inputs through a fuzz target without a fuzzer. The arguments are folders; one that is
/// not there holds nothing. Each name is printed first, so that a crash names its input.
namespace {

std::vector<std::filesystem::path> files_in(const std::filesystem::path& folder) {
  std::vector<std::filesystem::path> files;
  if (!std::filesystem::exists(folder)) return files;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    if (entry.is_regular_file()) files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

void replay(const std::filesystem::path& file) {
  std::cout << file.filename().string() << std::endl;
  std::ifstream stream(file, std::ios::binary);
  if (!stream) throw std::filesystem::filesystem_error("cannot be read", file, {});
  const std::vector<char> bytes{std::istreambuf_iterator<char>(stream), {}};
  const std::vector<std::uint8_t> input(bytes.begin(), bytes.end());
  LLVMFuzzerTestOneInput(input.data(), input.size());
}

}  // namespace

// A file that cannot be read ends the test.
// NOLINTNEXTLINE(bugprone-exception-escape)
int main(int argument_count, char** arguments) {
  const std::vector<std::string> folders(arguments + 1, arguments + argument_count);
  std::size_t replayed = 0;
  for (const std::string& folder : folders) {
    for (const auto& file : files_in(folder)) {
      replay(file);
      ++replayed;
    }
  }
  std::cout << replayed << " inputs replayed\n";
  return replayed > 0 ? 0 : 1;
}
