#pragma once

#include "text/numbers.hpp"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>

#include <CLI/App.hpp>
#include <fmt/format.h>

/// What the words after options stand for.
namespace fingerturn::cli {

/// Lets whole numbers pass that lie between two others.
CLI::Validator number_from(int least, int most);

/// An option whose words stand for values.
template <typename Value>
CLI::Option* add_choice(CLI::App& command, const std::string& name,
                        std::map<std::string, std::type_identity_t<Value>> choices, Value& value,
                        const std::string& description) {
  std::string words;
  for (const auto& [word, meaning] : choices) words += (words.empty() ? "" : "|") + word;
  const auto check = [choices, words](const std::string& word) {
    return choices.contains(word) ? std::string()
                                  : fmt::format("expected {}, found \"{}\"", words, word);
  };
  const auto choose = [choices = std::move(choices), &value](const std::string& word) {
    value = choices.at(word);
  };
  return command.add_option_function<std::string>(name, choose, description)
      ->check(check, "")
      ->type_name(words);
}

}  // namespace fingerturn::cli
