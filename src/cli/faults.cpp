#include "cli/faults.hpp"

#include "cli/new_file.hpp"

#include <cstdlib>
#include <new>
#include <string_view>

#include <execinfo.h>

namespace fingerturn::cli {
namespace {

/// Words that need no memory.
constexpr std::string_view kNoMemoryLine = "fingerturn: there is not enough memory for this\n";

/// Where something goes wrong within what may not fail, as some functions of other libraries may
/// not that take memory all the same.
[[noreturn]] void end_by_fault() noexcept {
  try {
    if (const std::exception_ptr fault = std::current_exception()) std::rethrow_exception(fault);
  } catch (const std::bad_alloc&) {
    end_without_memory();
  } catch (const std::exception& fault) {
    say_fault(fault);
  } catch (...) {
    say_text("fingerturn: an unknown fault\n");
  }
  std::abort();
}

}  // namespace

std::string fault_words(const std::exception& fault) {
  const bool wants_memory = dynamic_cast<const std::bad_alloc*>(&fault) != nullptr;
  return wants_memory ? "there is not enough memory for this" : fault.what();
}

void say_fault(const std::exception& fault) noexcept {
  try {
    say(fault_words(fault));
  } catch (const std::exception&) {
    say_text(kNoMemoryLine);
  }
}

void end_without_memory() noexcept {
  take_away_hidden_file();
  say_text(kNoMemoryLine);
  std::_Exit(static_cast<int>(ExitStatus::input_failed));
}

void prepare_for_faults() noexcept {
  std::set_terminate(end_by_fault);
  // The C library loads what it clears up with when that is first needed, which takes memory.
  void* place = nullptr;
  static_cast<void>(::backtrace(&place, 1));
}

}  // namespace fingerturn::cli
