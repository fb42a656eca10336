#include "read/musicxml/made_container.hpp"

#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>

#include <unistd.h>
#include <zip.h>

namespace fingerturn::tests {
namespace {

void must(bool good) {
  if (!good) throw std::runtime_error("the zip library failed");
}

void pack(const PackedFiles& files, const std::string& path) {
  zipFile archive = zipOpen64(path.c_str(), APPEND_STATUS_CREATE);
  must(archive != nullptr);
  for (const auto& [name, text] : files) {
    must(zipOpenNewFileInZip(archive, name.c_str(), nullptr, nullptr, 0, nullptr, 0, nullptr,
                             Z_DEFLATED, Z_DEFAULT_COMPRESSION) == ZIP_OK);
    must(zipWriteInFileInZip(archive, text.data(), static_cast<unsigned>(text.size())) == ZIP_OK);
    must(zipCloseFileInZip(archive) == ZIP_OK);
  }
  must(zipClose(archive, nullptr) == ZIP_OK);
}

}  // namespace

std::string packed(const PackedFiles& files) {
  std::string path = (std::filesystem::temp_directory_path() / "fingerturn-XXXXXX").string();
  const int made = ::mkstemp(path.data());
  must(made >= 0 && ::close(made) == 0);
  pack(files, path);
  std::ifstream stream(path, std::ios::binary);
  std::string bytes(std::istreambuf_iterator<char>(stream), {});
  std::filesystem::remove(path);
  return bytes;
}

}  // namespace fingerturn::tests
