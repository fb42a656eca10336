#include "read/musicxml/made_container.hpp"

#include <array>
#include <stdexcept>

#include <zip.h>

namespace fingerturn::tests {
namespace {

void must(bool good) {
  if (!good) throw std::runtime_error("the zip library failed");
}

}  // namespace

std::string packed(const PackedFiles& files) {
  zip_source_t* bytes = zip_source_buffer_create(nullptr, 0, 0, nullptr);
  must(bytes != nullptr);
  zip_source_keep(bytes);
  zip_t* archive = zip_open_from_source(bytes, ZIP_TRUNCATE, nullptr);
  must(archive != nullptr);
  for (const auto& [name, text] : files) {
    zip_source_t* file = zip_source_buffer(archive, text.data(), text.size(), 0);
    must(zip_file_add(archive, name.c_str(), file, ZIP_FL_ENC_UTF_8) >= 0);
  }
  must(zip_close(archive) == 0 && zip_source_open(bytes) == 0);
  std::string result;
  std::array<char, 4096> block{};
  for (zip_int64_t count = 0; (count = zip_source_read(bytes, block.data(), block.size())) > 0;) {
    result.append(block.data(), static_cast<std::size_t>(count));
  }
  zip_source_close(bytes);
  zip_source_free(bytes);
  return result;
}

std::string with_ends(const std::string& container, std::size_t count) {
  // APPNOTE.TXT, 4.3.16: the last two of its 22 bytes say how many bytes of a comment follow.
  constexpr std::size_t kEnd = 22;
  const std::size_t begin = container.rfind("PK\x05\x06");
  must(begin != std::string::npos && begin + kEnd == container.size());
  std::string result = container.substr(0, begin);
  for (std::size_t left = count; left > 0; --left) {
    const std::size_t comment = (left - 1) * kEnd;
    result += container.substr(begin, kEnd - 2);
    result += static_cast<char>(comment & 0xFFU);
    result += static_cast<char>(comment >> 8U);
  }
  return result;
}

}  // namespace fingerturn::tests
