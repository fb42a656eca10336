#include "text/file_name.hpp"

#include "catch.hpp"

using namespace fingerturn;

TEST_CASE("a name is left of a path, without folders and the endings of scores") {
  CHECK(name_without_path("etudes/no-1.musicxml") == "no-1");
  CHECK(name_without_path("/a/b/waltz.passage") == "waltz");
  CHECK(name_without_path("waltz.mxl") == "waltz");
  CHECK(name_without_path("waltz.xml") == "waltz");
  CHECK(name_without_path("op. 3 no. 2") == "op. 3 no. 2");
  CHECK(name_without_path("folder/.xml") == ".xml");
  CHECK(name_without_path("standard input") == "standard input");
  CHECK(name_without_path("") == "");
}
