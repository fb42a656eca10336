#include "read/musicxml/container.hpp"

#include "fingerturn/read.hpp"

#include <algorithm>
#include <memory>

#include <fmt/core.h>
#include <pugixml.hpp>
#include <zip.h>

namespace fingerturn {
namespace {

struct Discard {
  void operator()(zip_t* archive) const noexcept { zip_discard(archive); }
};
struct CloseFile {
  void operator()(zip_file_t* file) const noexcept { zip_fclose(file); }
};
using Archive = std::unique_ptr<zip_t, Discard>;
using PackedFile = std::unique_ptr<zip_file_t, CloseFile>;

constexpr std::size_t kMebibyte = std::size_t{1} << 20U;

/// How much a container of this size may unpack to: text packs some twenty times smaller, and
/// hardly ever a hundred times.
std::size_t most_unpacked(std::size_t packed) {
  constexpr std::size_t kMostRatio = 200;
  return std::min(kLargestMusicXml, kMebibyte + kMostRatio * packed);
}

std::size_t count_of(std::string_view wanted, std::string_view bytes) {
  std::size_t count = 0;
  for (std::size_t at = bytes.find(wanted); at != std::string_view::npos;
       at = bytes.find(wanted, at + wanted.size())) {
    ++count;
  }
  return count;
}

/// Whether a zip file has no more entries and directories than the container of a score. Of more
/// the zip library would compare each entry with each of a like name, and read the whole directory
/// once for each place that may be its end.
bool is_small_directory(std::string_view bytes) {
  constexpr std::size_t kMostEntries = 1000;
  constexpr std::size_t kMostEnds = 8;
  return count_of("PK\x01\x02", bytes) <= kMostEntries &&
         count_of("PK\x05\x06", bytes) <= kMostEnds;
}

Archive open_archive(std::string_view bytes) {
  constexpr int kLeaveBytesAlone = 0;
  zip_source_t* source =
      zip_source_buffer_create(bytes.data(), bytes.size(), kLeaveBytesAlone, nullptr);
  if (source == nullptr) return nullptr;
  zip_t* archive = zip_open_from_source(source, ZIP_RDONLY, nullptr);
  if (archive == nullptr) zip_source_free(source);
  return Archive(archive);
}

enum class Outcome : std::uint8_t { done, missing, broken, too_large };

struct Unpacked {
  Outcome outcome = Outcome::done;
  std::string bytes;
};

/// What a file says of its own size is not believed: it is read until there is too much of it.
Unpacked unpack(zip_t* archive, const std::string& name, std::size_t most) {
  const zip_int64_t index = zip_name_locate(archive, name.c_str(), ZIP_FL_ENC_GUESS);
  if (index < 0) return {Outcome::missing, {}};
  const PackedFile file(zip_fopen_index(archive, static_cast<zip_uint64_t>(index), 0));
  if (file == nullptr) return {Outcome::broken, {}};
  Unpacked unpacked;
  constexpr std::size_t kBlock = std::size_t{64} * 1024;
  std::string block(kBlock, '\0');
  for (;;) {
    const zip_int64_t count = zip_fread(file.get(), block.data(), block.size());
    if (count < 0) return {Outcome::broken, {}};
    if (count == 0) return unpacked;
    unpacked.bytes.append(block, 0, static_cast<std::size_t>(count));
    if (unpacked.bytes.size() > most) return {Outcome::too_large, {}};
  }
}

bool is_musicxml(std::string_view media_type) {
  return media_type.empty() || media_type.find("musicxml") != std::string_view::npos;
}

/// The name of the score: the first root file that is MusicXML.
std::string root_file_in(const std::string& container) {
  pugi::xml_document document;
  document.load_buffer(container.data(), container.size());
  for (const pugi::xml_node root : document.child("container").child("rootfiles")) {
    if (is_musicxml(root.attribute("media-type").value())) {
      return root.attribute("full-path").value();
    }
  }
  return {};
}

void report(Outcome outcome, const std::string& name, Reporter& reporter) {
  if (outcome == Outcome::too_large) {
    reporter.report("too-large", {},
                    fmt::format("expected a score of reasonable size, found that {} unpacks to "
                                "very many times the size of its container",
                                quoted(name)));
  } else if (outcome == Outcome::missing) {
    reporter.report("mxl", {},
                    fmt::format("expected {} in the container, found none", quoted(name)));
  } else {
    reporter.report("mxl", {},
                    fmt::format("expected {} to be whole and without a password, found that it "
                                "cannot be unpacked",
                                quoted(name)));
  }
}

}  // namespace

std::optional<std::string> unpack_mxl(std::string_view bytes, Reporter& reporter) {
  if (!is_small_directory(bytes)) {
    reporter.report("mxl", {}, "expected a container of a score, found one of very many files");
    return std::nullopt;
  }
  const Archive archive = open_archive(bytes);
  if (archive == nullptr) {
    reporter.report("mxl", {}, "expected a zip container, found that this one is broken");
    return std::nullopt;
  }
  const std::string container_name = "META-INF/container.xml";
  const Unpacked container = unpack(archive.get(), container_name, kMebibyte);
  if (container.outcome != Outcome::done) {
    report(container.outcome, container_name, reporter);
    return std::nullopt;
  }
  const std::string name = root_file_in(container.bytes);
  if (name.empty()) {
    reporter.report("mxl", {},
                    "expected META-INF/container.xml to name a MusicXML root file, found none");
    return std::nullopt;
  }
  Unpacked score = unpack(archive.get(), name, most_unpacked(bytes.size()));
  if (score.outcome == Outcome::done) return std::move(score.bytes);
  report(score.outcome, name, reporter);
  return std::nullopt;
}

}  // namespace fingerturn
