#include "write/json/writer.hpp"

#include <algorithm>

#include <nlohmann/json.hpp>

namespace fingerturn {
namespace {

/// The replacing handler leaves the library nothing to throw about.
std::string dumped(const nlohmann::json& value) {
  constexpr int kNoIndent = -1;
  return value.dump(kNoIndent, ' ', false, nlohmann::json::error_handler_t::replace);
}

/// Whether JSON writes the text as it is. Most texts are such and are spared the way through the
/// library.
bool is_plain(std::string_view text) {
  return std::all_of(text.begin(), text.end(), [](char letter) {
    return letter >= ' ' && letter <= '~' && letter != '"' && letter != '\\';
  });
}

}  // namespace

void JsonWriter::value(std::string_view text) {
  if (is_plain(text)) {
    out_.add('"');
    out_.add(text);
    out_.add(kEndOfText);
  } else {
    raw(dumped(text));
  }
}

void JsonWriter::exact(double number) { raw(dumped(number)); }

}  // namespace fingerturn
