#include "write/json/json_reading.hpp"

#include "catch.hpp"

namespace fingerturn::tests {

Json parsed_json(const std::string& text) {
  REQUIRE(Json::accept(text));
  return Json::parse(text);
}

}  // namespace fingerturn::tests
