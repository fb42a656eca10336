#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>

#include <pugixml.hpp>

/// How long pugixml by itself takes to parse files from the disk, as the measure for what reads
/// them with it: the shortest of so many rounds, in milliseconds.
///
///     fingerturn_parse ROUNDS FILE...
int main(int count, char** words) {
  using Clock = std::chrono::steady_clock;
  const int rounds = count > 1 ? std::atoi(words[1]) : 0;
  double best = 1e9;
  for (int round = 0; round < rounds; ++round) {
    const Clock::time_point begin = Clock::now();
    for (int i = 2; i < count; ++i) {
      pugi::xml_document document;
      if (!document.load_file(words[i])) return 1;
    }
    const std::chrono::duration<double, std::milli> taken = Clock::now() - begin;
    best = std::min(best, taken.count());
  }
  std::printf("%.2f\n", best);
  return rounds > 0 ? 0 : 1;
}
