#include "score/diagnostic_codes.hpp"

/// Compiled as it is and with MISTYPED: a code that is not in the table must not compile.
fingerturn::KnownCode code() {
#ifdef MISTYPED
  return "finger-rang";
#else
  return "finger-range";
#endif
}
