#include "mutation.hpp"
#include "target.hpp"

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// Runs a fuzz target without a fuzzer. What breaks a promise ends it with a signal; before each
/// input its name or number is printed.
///
///     replay_X FOLDER...                     over the files in the folders
///     replay_X --spoil COUNT SEED PATH...    over so many spoiled inputs, made of the files there
namespace {

using Words = std::span<char* const>;

std::vector<std::filesystem::path> files_at(const std::filesystem::path& path) {
  if (!std::filesystem::is_directory(path)) return {path};
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(path)) {
    if (entry.is_regular_file()) files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  return files;
}

std::string bytes_of(const std::filesystem::path& file) {
  std::ifstream stream(file, std::ios::binary);
  if (!stream) throw std::filesystem::filesystem_error("cannot be read", file, {});
  return {std::istreambuf_iterator<char>(stream), {}};
}

void replay(std::string_view name, const std::string& bytes) {
  std::cout << name << std::endl;
  const std::vector<std::uint8_t> input(bytes.begin(), bytes.end());
  LLVMFuzzerTestOneInput(input.data(), input.size());
}

std::size_t replay_files(Words paths) {
  std::size_t replayed = 0;
  for (const std::filesystem::path path : paths) {
    if (!std::filesystem::exists(path)) continue;
    for (const auto& file : files_at(path)) {
      replay(file.filename().string(), bytes_of(file));
      ++replayed;
    }
  }
  return replayed;
}

std::size_t replay_spoiled(std::size_t count, std::uint64_t seed, Words paths) {
  std::vector<std::string> texts;
  for (const std::filesystem::path path : paths) {
    for (const auto& file : files_at(path)) texts.push_back(bytes_of(file));
  }
  if (texts.empty()) return 0;
  for (std::size_t i = 0; i < count; ++i) {
    replay(std::to_string(seed + i), fingerturn::tests::Mutation(seed + i).one_of(texts));
  }
  return count;
}

std::uint64_t number_of(const char* word) { return std::strtoull(word, nullptr, 10); }

}  // namespace

// A file that cannot be read ends the test.
// NOLINTNEXTLINE(bugprone-exception-escape)
int main(int count, char** arguments) {
  const Words words(arguments + 1, static_cast<std::size_t>(count - 1));
  const bool spoils = words.size() > 3 && std::string_view(words[0]) == "--spoil";
  const std::size_t replayed =
      spoils ? replay_spoiled(number_of(words[1]), number_of(words[2]), words.subspan(3))
             : replay_files(words);
  std::cout << replayed << " inputs replayed\n";
  return replayed > 0 ? 0 : 1;
}
