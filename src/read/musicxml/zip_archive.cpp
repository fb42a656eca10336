#include "read/musicxml/zip_archive.hpp"

#include "text/encoding.hpp"

#include <cstring>

#include <unzip.h>

namespace fingerturn {

/// What the zip library calls to open, read and go about in a file.
struct ZipArchive::Calls {
  static File& file_of(voidpf stream) noexcept { return *static_cast<File*>(stream); }

  static voidpf open(voidpf file, const void* /*name*/, int /*mode*/) noexcept { return file; }

  static uLong read(voidpf /*file*/, voidpf stream, void* to, uLong size) noexcept {
    File& file = file_of(stream);
    const std::string_view next = file.bytes.substr(file.at, size);
    std::memcpy(to, next.data(), next.size());
    file.at += next.size();
    return next.size();
  }

  static ZPOS64_T tell(voidpf /*file*/, voidpf stream) noexcept { return file_of(stream).at; }

  static long seek(voidpf /*file*/, voidpf stream, ZPOS64_T offset, int origin) noexcept {
    File& file = file_of(stream);
    const std::size_t from = origin == ZLIB_FILEFUNC_SEEK_CUR   ? file.at
                             : origin == ZLIB_FILEFUNC_SEEK_END ? file.bytes.size()
                                                                : 0;
    if (offset > file.bytes.size() - from) return -1;
    file.at = from + offset;
    return 0;
  }

  static int close(voidpf /*file*/, voidpf /*stream*/) noexcept { return 0; }
  static int has_failed(voidpf /*file*/, voidpf /*stream*/) noexcept { return 0; }
};

namespace {

/// The name of the file that the archive has come to.
std::string name_in(unzFile archive, const unz_file_info64& about) {
  std::string name(about.size_filename, '\0');
  unzGetCurrentFileInfo64(archive, nullptr, name.data(), name.size(), nullptr, 0, nullptr, 0);
  return name;
}

/// Whether a name in an archive, which is in UTF-8 or in the letters of old systems (APPNOTE.TXT,
/// appendix D), is this one.
bool is_name(const std::string& name, std::string_view wanted) {
  constexpr Encoding kOldLetters{"CP437"};
  return name == wanted || to_utf8(name, kOldLetters) == wanted;
}

/// Goes to the file of this name.
Unpacking go_to(unzFile archive, std::string_view wanted, unz_file_info64& about) {
  int state = unzGoToFirstFile(archive);
  for (; state == UNZ_OK; state = unzGoToNextFile(archive)) {
    unzGetCurrentFileInfo64(archive, &about, nullptr, 0, nullptr, 0, nullptr, 0);
    if (is_name(name_in(archive, about), wanted)) return Unpacking::done;
  }
  return Unpacking::missing;
}

/// What the file holds that is open. What an archive says of its size is not believed: it is read
/// until there is too much of it.
Unpacked contents(unzFile archive, std::size_t most) {
  Unpacked unpacked;
  constexpr std::size_t kBlock = std::size_t{64} * 1024;
  std::string block(kBlock, '\0');
  for (;;) {
    const int count = unzReadCurrentFile(archive, block.data(), kBlock);
    if (count < 0) return {Unpacking::broken, {}};
    if (count == 0) return unpacked;
    unpacked.bytes.append(block, 0, static_cast<std::size_t>(count));
    if (unpacked.bytes.size() > most) return {Unpacking::too_large, {}};
  }
}

}  // namespace

ZipArchive::ZipArchive(std::string_view bytes) noexcept : file_{bytes} {
  zlib_filefunc64_def calls{Calls::open, Calls::read,  nullptr,           Calls::tell,
                            Calls::seek, Calls::close, Calls::has_failed, &file_};
  handle_.reset(unzOpen2_64("", &calls));
}

void ZipArchive::Close::operator()(void* handle) const noexcept { unzClose(handle); }

Unpacked ZipArchive::unpack(std::string_view name, std::size_t most) const {
  constexpr uLong kHasPassword = 1;
  unz_file_info64 about{};
  const Unpacking found = go_to(handle_.get(), name, about);
  if (found != Unpacking::done) return {found, {}};
  const bool opened =
      (about.flag & kHasPassword) == 0 && unzOpenCurrentFile(handle_.get()) == UNZ_OK;
  if (!opened) return {Unpacking::broken, {}};
  Unpacked unpacked = contents(handle_.get(), most);
  // The sum of the bytes is only compared where there are as many as the archive says.
  const bool whole = unzCloseCurrentFile(handle_.get()) == UNZ_OK &&
                     unpacked.bytes.size() == about.uncompressed_size;
  if (unpacked.outcome == Unpacking::done && !whole) return {Unpacking::broken, {}};
  return unpacked;
}

}  // namespace fingerturn
