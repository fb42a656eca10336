#pragma once

#include "cli/options/value.hpp"

#include <cstddef>
#include <map>
#include <span>
#include <string>
#include <type_traits>
#include <utility>

#include <CLI/App.hpp>
#include <fmt/format.h>

namespace fingerturn::cli {

/// "text to read, json or jsonl for programs": what each format of a table is for.
template <typename Row>
std::string purposes_of(std::span<const Row> formats) {
  std::string words;
  for (std::size_t i = 0; i < formats.size(); ++i) {
    const bool is_last = i + 1 == formats.size();
    const bool shares_purpose = !is_last && formats[i].purpose == formats[i + 1].purpose;
    words += shares_purpose
                 ? fmt::format("{} or ", formats[i].name)
                 : fmt::format("{} {}{}", formats[i].name, formats[i].purpose, is_last ? "" : ", ");
  }
  return words;
}

/// Chooses from a table of formats, which have a name and a purpose; the first if none is named.
template <typename Row>
void add_format(CLI::App& command, std::span<const std::type_identity_t<Row>> formats,
                const Row*& chosen) {
  chosen = &formats.front();
  std::map<std::string, const Row*> choices;
  for (const Row& format : formats) choices.emplace(format.name, &format);
  add_choice(command, "--format", std::move(choices), chosen, purposes_of<Row>(formats));
}

}  // namespace fingerturn::cli
