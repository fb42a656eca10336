#include "cli/options/music_format.hpp"

#include "cli/messages.hpp"
#include "cli/options/format.hpp"
#include "fingerturn/report.hpp"

#include <array>

#include <fmt/core.h>

namespace fingerturn::cli {
namespace {

constexpr std::array kMusicFormats{
    MusicFormat{"passage", "to edit and to hand on"},
    MusicFormat{"musicxml", "for a score with the music alone", true},
};

}  // namespace

void add_music_format(CLI::App& command, const MusicFormat*& chosen) {
  add_format(command, kMusicFormats, chosen);
}

std::optional<std::string> written_in(const MusicFormat& format, const Score& score,
                                      std::string_view name,
                                      const std::function<std::string()>& as_passage) {
  if (!format.is_score) return as_passage();
  const std::string problem = musicxml_problem(score);
  if (problem.empty()) return write_musicxml(score);
  say(fmt::format("{}: {}", name, problem));
  return std::nullopt;
}

}  // namespace fingerturn::cli
