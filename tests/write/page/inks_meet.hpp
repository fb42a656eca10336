#pragma once

#include "write/page/ink/ink.hpp"

namespace fingerturn::tests {

/// Whether two inks lie over one another: beams and bows by their own shapes, all else by boxes.
bool inks_meet(const Ink& one, const Ink& other);

/// Whether an ink reaches beyond a page from 0 to these edges.
bool leaves(const Ink& ink, double width, double height);

}  // namespace fingerturn::tests
