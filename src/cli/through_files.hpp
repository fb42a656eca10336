#pragma once

#include "cli/in_order.hpp"
#include "cli/messages.hpp"
#include "cli/options/library.hpp"
#include "cli/output.hpp"
#include "cli/progress.hpp"
#include "cli/terminal.hpp"

#include <algorithm>
#include <cstddef>
#include <string>
#include <thread>
#include <utility>
#include <vector>

namespace fingerturn::cli {

/// What came of one file: a result, and what is to be written and said once its turn has come.
template <typename Result>
struct FromFile {
  Result result;
  std::string text;
  std::string messages;
};

inline std::size_t jobs_for(std::size_t files, const Library& library) {
  const std::size_t wanted =
      library.jobs ? static_cast<std::size_t>(*library.jobs) : std::thread::hardware_concurrency();
  return std::clamp<std::size_t>(wanted, 1, std::max<std::size_t>(files, 1));
}

/// Goes through files, several at a time: `make(file)` gives a FromFile, and `take(result)` is
/// called in the order of the files, after its text has been written. On a terminal it says how far
/// it is; not where lines for programs go there (`is_read` false), between which is no place.
template <typename Make, typename Take>
void through_files(const std::vector<LibraryFile>& files, const Library& library, Output& output,
                   bool is_read, const Make& make, const Take& take) {
  Progress progress(files.size(), is_read || !output.is_standard() || !writes_to_terminal());
  std::size_t done = 0;
  const auto make_one = [&](std::size_t number) { return make(files[number]); };
  const auto take_one = [&](auto from) {
    if (!from.messages.empty() || !from.text.empty()) progress.rub_out();
    say_text(from.messages);
    output.write(from.text);
    take(std::move(from.result));
    progress.show(done + 1, files[done].path);
    ++done;
  };
  in_order(files.size(), jobs_for(files.size(), library), make_one, take_one);
}

}  // namespace fingerturn::cli
