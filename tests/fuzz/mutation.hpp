#pragma once

#include <cstddef>
#include <cstdint>
#include <random>
#include <string>
#include <vector>

namespace fingerturn::tests {

/// Spoils texts the way that hands and programs spoil them: pieces between blanks and tags are
/// lost, doubled, exchanged or taken from another text, numbers become extreme, bytes change, ends
/// are missing; parts of XML are changed as parts half of the time. The same seed spoils alike on
/// every machine.
class Mutation {
 public:
  explicit Mutation(std::uint64_t seed) : engine_(seed) {}

  /// One of the texts, spoiled once or a few times; there is one or more.
  std::string one_of(const std::vector<std::string>& texts);

 private:
  /// A part of a text.
  struct Piece {
    std::size_t begin = 0;
    std::size_t size = 0;
  };

  std::size_t below(std::size_t limit) { return static_cast<std::size_t>(engine_() % limit); }
  Piece piece_of(const std::string& text);
  void spoil(std::string& text, const std::string& other);
  void change_number(std::string& text);
  void change_byte(std::string& text);

  std::mt19937_64 engine_;
};

}  // namespace fingerturn::tests
