#pragma once

#include <cstddef>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

namespace fingerturn {

/// What became of unpacking a file.
enum class Unpacking : std::uint8_t { done, missing, broken, too_large };

struct Unpacked {
  Unpacking outcome = Unpacking::done;
  std::string bytes;
};

/// A zip file in memory, whose bytes must outlive it. Any bytes may come in.
class ZipArchive {
 public:
  explicit ZipArchive(std::string_view bytes) noexcept;
  ~ZipArchive() = default;
  ZipArchive(const ZipArchive&) = delete;
  ZipArchive& operator=(const ZipArchive&) = delete;

  /// Whether there is a directory of files.
  [[nodiscard]] bool is_open() const noexcept { return handle_ != nullptr; }

  /// The file of this name in an archive that is open. One that has more bytes than this is too
  /// large, one with a password broken.
  [[nodiscard]] Unpacked unpack(std::string_view name, std::size_t most) const;

 private:
  /// The bytes as a file, as the zip library reads them.
  struct File {
    std::string_view bytes;
    std::size_t at = 0;
  };
  struct Calls;
  struct Close {
    void operator()(void* handle) const noexcept;
  };

  File file_;
  std::unique_ptr<void, Close> handle_;
};

}  // namespace fingerturn
