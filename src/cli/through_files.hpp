#pragma once

#include "cli/in_order.hpp"
#include "cli/messages.hpp"
#include "cli/options/library.hpp"
#include "cli/output.hpp"
#include "cli/progress.hpp"

#include <cstddef>
#include <string>
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

/// How many files are worked at together.
std::size_t jobs_for(std::size_t files, const Library& library);

/// Whether a line of progress has a place: it has none between lines for programs on a terminal,
/// nor where somebody types.
bool has_room_for_progress(const std::vector<LibraryFile>& files, const Output& output,
                           bool is_read);

/// Goes through files, several at a time: `make(file)` gives a FromFile, and `take(result)` is
/// called in the order of the files, after its text has been written. On a terminal it says how far
/// it is; `is_read` is whether what is written is read by people.
template <typename Make, typename Take>
void through_files(const std::vector<LibraryFile>& files, const Library& library, Output& output,
                   bool is_read, const Make& make, const Take& take) {
  Progress progress(has_room_for_progress(files, output, is_read));
  std::size_t done = 0;
  const auto make_one = [&](std::size_t number) { return make(files[number]); };
  const auto take_one = [&](auto from) {
    if (!from.messages.empty() || !from.text.empty()) progress.rub_out();
    say_text(from.messages);
    output.write(from.text);
    take(std::move(from.result));
    ++done;
    progress.turn_to(done, files.size(), files[done - 1].path);
    progress.show();
  };
  if (!files.empty()) progress.turn_to(0, files.size(), files.front().path);
  progress.show();
  in_order(files.size(), jobs_for(files.size(), library), make_one, take_one);
}

}  // namespace fingerturn::cli
