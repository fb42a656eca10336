#include "read/musicxml/hand_signs.hpp"

#include "catch.hpp"

#include <optional>
#include <string>

using namespace fingerturn;

TEST_CASE("the hand that a text begins with") {
  const std::string right = GENERATE("m.d.", "M.D.", "m. d.", "md", "(r.h.)", "R. H.", "rh", "r.h",
                                     "m.d. sopra", "m. d. sopra", "Mano destra", "main droite",
                                     "right hand", "RIGHT HAND over", "rechte Hand", " [m.d.]");
  CAPTURE(right);
  CHECK(hand_called(right) == Hand::right);
}

TEST_CASE("the left hand that a text begins with") {
  const std::string left = GENERATE("m.g.", "m.s.", "M. S.", "l.h.", "L.H. sempre", "ms", "lh",
                                    "mano sinistra", "main gauche", "left-hand", "linke Hand");
  CAPTURE(left);
  CHECK(hand_called(left) == Hand::left);
}

TEST_CASE("a text that names no hand") {
  const std::string text = GENERATE("", ".", "m", "m.", "dolce", "md dolce", "m d dolce", "right",
                                    "left", "hand", "double left", "mano", "main theme", "M.M. 60",
                                    "p m.d.", "mdx", "m.dx.", "m.d\u00E9", "cresc. l.h.", "r.s.");
  CAPTURE(text);
  CHECK(hand_called(text) == std::nullopt);
}
