#include "write/page/svg_style.hpp"

namespace fingerturn {

/// Shape and stroke tell the kinds apart; colour only repeats it. Blue and orange are apart for
/// every common form of colour blindness, and as light and dark on paper.
std::string_view picture_style() noexcept {
  return R"(.swing text{fill:#1c2126;font:12px system-ui,"Segoe UI",Roboto,"DejaVu Sans",sans-serif}
.swing .f{text-anchor:middle;font-weight:700;font-size:13px}
.swing .on{fill:#fff}
.swing .name{text-anchor:end;fill:#555d66;font-size:11px}
.swing .gesture{fill:#e9edf2}
.swing .side{fill:none;stroke:#8d96a0;stroke-width:.8}
.swing .lane{fill:#f4f6f8;stroke:none}
.swing .play{fill:none;stroke:#14507d;stroke-width:2.4}
.swing .prepare{fill:none;stroke:#a03c00;stroke-width:1.6;stroke-dasharray:3.5 2.5}
.swing .turn{fill:#fff;stroke:#a03c00;stroke-width:1.6}
.swing .single{fill:#fff;stroke:#14507d;stroke-width:1.8}
.swing .double{fill:#a03c00;stroke:none}
.swing .ring{fill:#fff;stroke:#a03c00;stroke-width:1.6}
.swing .prep{fill:#fff;stroke:#5c3c8c;stroke-width:2.4}
.swing .level{fill:#fff;stroke:#1c2126;stroke-width:1.6}
.swing .open{fill:#fff;stroke:#555d66;stroke-width:1.6;stroke-dasharray:2 2}
.swing .crossing{fill:none;stroke:#1c2126;stroke-width:1.6}
.swing .place{fill:none;stroke:#1c2126;stroke-width:2.4}
.swing .depth{fill:none;stroke:#1c2126;stroke-width:1.6;stroke-dasharray:6 2}
.swing .bar{fill:none;stroke:#1c2126;stroke-width:1}
.swing .thick{stroke-width:3}
.swing .dot{fill:#1c2126}
@media screen and (prefers-color-scheme:dark){
.swing text{fill:#e6e9ec}
.swing .on{fill:#14181d}
.swing .name{fill:#a9b2bb}
.swing .gesture{fill:#262d35}
.swing .side{stroke:#7d8791}
.swing .lane{fill:#1d232a}
.swing .play{stroke:#7fc0f5}
.swing .prepare{stroke:#ffab70}
.swing .turn{fill:#14181d;stroke:#ffab70}
.swing .single{fill:#14181d;stroke:#7fc0f5}
.swing .double{fill:#ffab70}
.swing .ring{fill:#14181d;stroke:#ffab70}
.swing .prep{fill:#14181d;stroke:#c3a6f0}
.swing .level{fill:#14181d;stroke:#e6e9ec}
.swing .open{fill:#14181d;stroke:#a9b2bb}
.swing .crossing,.swing .place,.swing .depth,.swing .bar{stroke:#e6e9ec}
.swing .dot{fill:#e6e9ec}
}
)";
}

}  // namespace fingerturn
