#include "write/page/pages.hpp"

#include "catch.hpp"

#include <utility>

namespace fingerturn::tests {

AnalysedScore analysed(const std::string& notation) {
  const Source source("test.passage", notation);
  ReadResult read = read_notation(source);
  INFO(render(source, read.diagnostics));
  REQUIRE(read.ok());
  return AnalysedScore("test.passage", std::move(read.score));
}

pugi::xml_document parsed(const std::string& text) {
  pugi::xml_document document;
  const pugi::xml_parse_result result =
      document.load_buffer(text.data(), text.size(), pugi::parse_full, pugi::encoding_utf8);
  INFO(result.description() << " at byte " << result.offset);
  REQUIRE(result);
  return document;
}

std::string text_in(const pugi::xml_node& node) {
  std::string text;
  for (const pugi::xpath_node& found : node.select_nodes(".//text()")) {
    text += found.node().value();
  }
  return text;
}

std::vector<pugi::xml_node> all_of(const pugi::xml_node& node, const char* path) {
  std::vector<pugi::xml_node> nodes;
  for (const pugi::xpath_node& found : node.select_nodes(path)) nodes.push_back(found.node());
  return nodes;
}

}  // namespace fingerturn::tests
