#pragma once

namespace fingerturn::cli {

/// What the program tells the shell. The numbers are part of its interface.
enum class ExitStatus : int {
  done = 0,
  /// Done, and check found what was asked about, or find found nothing.
  answer = 1,
  wrong_usage = 2,   ///< the command cannot be carried out as given
  input_failed = 3,  ///< some input could not be read; the others were done
};

}  // namespace fingerturn::cli
