#pragma once

#include <string>

#include <nlohmann/json.hpp>

namespace fingerturn::tests {

/// JSON whose members keep their order.
using Json = nlohmann::ordered_json;

/// Reads a text that must be JSON. The library's reader is compiled here once for all tests.
Json parsed_json(const std::string& text);

}  // namespace fingerturn::tests
