#include <iostream>

#include <fingerturn/fingerturn.hpp>

int main() {
  const fingerturn::Source source("scale.passage", "C4:1 D:2 E:3 F:1");
  const fingerturn::ReadResult read = fingerturn::read_notation(source);
  if (!read.ok()) return 1;
  const fingerturn::AnalysedScore analysed(source.name(), read.score);
  for (const auto& [written, found] : analysed[0][0]) {
    std::cout << fingerturn::name_of(found.rotation) << '\n';
  }
}
