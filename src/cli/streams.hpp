#pragma once

namespace fingerturn::cli {

/// Makes sure that what goes wrong with the streams of the process is told, and goes nowhere else:
/// a stream that was closed when the program began stays one that fails, though its number would go
/// to the next file that is opened; and a file that grows larger than is allowed is an error of
/// writing rather than the end of the program.
void prepare_streams() noexcept;

}  // namespace fingerturn::cli
