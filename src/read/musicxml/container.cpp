#include "read/musicxml/container.hpp"

#include "fingerturn/read.hpp"
#include "read/musicxml/zip_archive.hpp"

#include <algorithm>

#include <fmt/core.h>
#include <pugixml.hpp>

namespace fingerturn {
namespace {

constexpr std::size_t kMebibyte = std::size_t{1} << 20U;

/// How much a container of this size may unpack to: text packs some twenty times smaller, and
/// hardly ever a hundred times.
std::size_t most_unpacked(std::size_t packed) {
  constexpr std::size_t kMostRatio = 200;
  return std::min(kLargestMusicXml, kMebibyte + kMostRatio * packed);
}

/// Whether a zip file has no more entries than the container of a score. The zip library reads a
/// directory a byte at a time.
bool is_small_directory(std::string_view bytes) {
  constexpr std::string_view kEntry = "PK\x01\x02";
  std::size_t left = 1000;
  for (std::size_t at = bytes.find(kEntry); at != std::string_view::npos;
       at = bytes.find(kEntry, at + kEntry.size())) {
    if (left-- == 0) return false;
  }
  return true;
}

bool is_musicxml(std::string_view media_type) {
  return media_type.empty() || media_type.find("musicxml") != std::string_view::npos;
}

/// The name of the score: the first root file that is MusicXML.
std::string root_file_in(const std::string& container) {
  pugi::xml_document document;
  const auto result = document.load_buffer(container.data(), container.size());
  if (result.status == pugi::status_out_of_memory) throw std::bad_alloc();
  for (const pugi::xml_node root : document.child("container").child("rootfiles")) {
    if (is_musicxml(root.attribute("media-type").value())) {
      return root.attribute("full-path").value();
    }
  }
  return {};
}

void report(Unpacking outcome, const std::string& name, Reporter& reporter) {
  if (outcome == Unpacking::too_large) {
    reporter.report("too-large", {},
                    fmt::format("expected a score of reasonable size, found that {} unpacks to "
                                "very many times the size of its container",
                                quoted(name)));
  } else if (outcome == Unpacking::missing) {
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
  const ZipArchive archive(bytes);
  if (!archive.is_open()) {
    reporter.report("mxl", {}, "expected a zip container, found that this one is broken");
    return std::nullopt;
  }
  const std::string container_name = "META-INF/container.xml";
  const Unpacked container = archive.unpack(container_name, kMebibyte);
  if (container.outcome != Unpacking::done) {
    report(container.outcome, container_name, reporter);
    return std::nullopt;
  }
  const std::string name = root_file_in(container.bytes);
  if (name.empty()) {
    reporter.report("mxl", {},
                    "expected META-INF/container.xml to name a MusicXML root file, found none");
    return std::nullopt;
  }
  Unpacked score = archive.unpack(name, most_unpacked(bytes.size()));
  if (score.outcome == Unpacking::done) return std::move(score.bytes);
  report(score.outcome, name, reporter);
  return std::nullopt;
}

}  // namespace fingerturn
