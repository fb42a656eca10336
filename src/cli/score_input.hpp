#pragma once

#include "cli/exit_status.hpp"
#include "cli/options/notes.hpp"
#include "cli/progress.hpp"
#include "fingerturn/analysed.hpp"
#include "fingerturn/score.hpp"
#include "fingerturn/source.hpp"

#include <optional>
#include <string>

namespace fingerturn::cli {

/// An input as a score; where `status` is not done, what was wrong has been said already.
struct ScoreInput {
  ExitStatus status = ExitStatus::done;
  std::string name;
  Score score;
  std::optional<Source> document;  ///< the text that the score was read from
  std::string index{};             ///< the file with the contents of its folder, where it has one
};

/// One that could not be read, of which what was wrong has been said.
ScoreInput failed(ExitStatus status);

/// Reads an input and cuts it down to the passage and hand that were asked for. Where it has no
/// such passage, or no notes in that hand and the bars that were asked for, the command cannot be
/// carried out on it as given.
ScoreInput read_score(const std::string& path, const ChosenNotes& notes, Progress& progress);
ScoreInput read_score(Source source, const ChosenNotes& notes, Progress& progress);

/// The score in the key, or the keys, that were asked for.
Transposed in_chosen_key(const Score& score, const ChosenNotes& notes);

/// Says that a score plays nothing in the bars and hand that were asked for, and which bars it has.
void say_nothing_is_played(const std::string& name, const Score& score, const ChosenNotes& notes);

/// A score with what was found in it, or in the bars that were asked for.
AnalysedScore analysed(std::string name, Score score, const AnalyseOptions& player,
                       const std::optional<BarRange>& bars);

}  // namespace fingerturn::cli
