#pragma once

#include <string>
#include <string_view>

#include <nlohmann/json.hpp>

/// What documents of our own hold that come back, whatever somebody made of them.
namespace fingerturn {

/// A member of an object; null where there is none, or no object.
inline const nlohmann::json* member_of(const nlohmann::json& object, const char* name) {
  if (!object.is_object()) return nullptr;
  const auto found = object.find(name);
  return found == object.end() ? nullptr : &*found;
}

/// A text; empty where it is none.
inline std::string_view text_in(const nlohmann::json* value) {
  const auto* found = value == nullptr ? nullptr : value->get_ptr<const std::string*>();
  return found == nullptr ? std::string_view() : std::string_view(*found);
}

}  // namespace fingerturn
