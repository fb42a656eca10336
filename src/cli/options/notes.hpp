#pragma once

#include "fingerturn/score.hpp"
#include "fingerturn/transpose.hpp"

#include <optional>
#include <string>

#include <CLI/App.hpp>

namespace fingerturn::cli {

/// Which notes of an input are asked for.
struct ChosenNotes {
  std::optional<Hand> hand;      ///< none for both
  std::optional<BarRange> bars;  ///< none for all
  std::optional<int> passage;    ///< from 1; none for all
  std::optional<int> part;       ///< of a MusicXML score, from 1; none for those for keyboard
  std::optional<Transposition> transposition;  ///< none: as it is written
  bool all_keys = false;                       ///< in all twelve, instead
};

/// All these options, of a command that shows what it finds.
void add_chosen_notes(CLI::App& command, ChosenNotes& notes);

void add_hand(CLI::App& command, std::optional<Hand>& hand, const std::string& description);
/// An option that takes bars, "--bars" or one of another name.
CLI::Option* add_bars(CLI::App& command, const std::string& name, std::optional<BarRange>& bars,
                      const std::string& description);
void add_transposition(CLI::App& command, ChosenNotes& notes);
void add_passage_and_part(CLI::App& command, ChosenNotes& notes);

}  // namespace fingerturn::cli
