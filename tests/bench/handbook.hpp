#pragma once

namespace fingerturn::bench {

/// Prints how many of the handbooks' scales and arpeggios, over one to four octaves, up, down and
/// both, come out whole in each hand with no finger given.
void print_handbook();

}  // namespace fingerturn::bench
