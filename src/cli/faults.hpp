#pragma once

#include "cli/exit_status.hpp"
#include "cli/messages.hpp"

#include <exception>
#include <string>

/// What can stop the work at one input and leaves the others as they are.
namespace fingerturn::cli {

/// What stopped the work, such as memory that the system does not give, in words.
std::string fault_words(const std::exception& fault);

/// Says what stopped all work, also where there is no memory for it.
void say_fault(const std::exception& fault) noexcept;

/// Ends the run at once with a message; nothing is left of an output.
[[noreturn]] void end_without_memory() noexcept;

/// Lets the run end in that way also where memory is wanted within what cannot tell of it.
void prepare_for_faults() noexcept;

/// The status of the work at an input. Where it is stopped, that is said, and the input is one that
/// failed.
template <typename Work>
ExitStatus status_of_work(const std::string& input, const Work& work) {
  try {
    return work();
  } catch (const std::exception& fault) {
    say(input + ": " + fault_words(fault));
  }
  return ExitStatus::input_failed;
}

}  // namespace fingerturn::cli
