#pragma once

#include "fingerturn/score.hpp"

#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include <CLI/App.hpp>

namespace fingerturn::cli {

/// A format of music alone, without a report.
struct MusicFormat {
  std::string_view name;
  std::string_view purpose;  ///< what it is for, in the words of help
  bool is_score = false;     ///< else the passage notation
};

/// Chooses one of them; the passage notation if none is named.
void add_music_format(CLI::App& command, const MusicFormat*& chosen);

/// A score in the format; `as_passage` writes it in the passage notation. Nothing, and a message
/// that begins with `name`, where the format cannot hold it.
std::optional<std::string> written_in(const MusicFormat& format, const Score& score,
                                      std::string_view name,
                                      const std::function<std::string()>& as_passage);

}  // namespace fingerturn::cli
