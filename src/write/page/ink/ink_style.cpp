#include "write/page/ink/ink_svg.hpp"

namespace fingerturn {

/// Shape and stroke tell the kinds apart; colour only repeats it. Blue and orange are apart for
/// every common form of colour blindness, and as light and dark on paper. What is drawn once and
/// referred to is found by its class alone: browsers do not look for what stands around it.
std::string_view ink_style() noexcept {
  return R"(.music{fill:none;stroke:#1c2126;stroke-linecap:butt}
.at{stroke:none}
.ink{fill:#1c2126;stroke:none}
.plain,.on,.offer,.strong,.quiet{fill:#1c2126;stroke:none;font-family:system-ui,"Segoe UI",Roboto,"DejaVu Sans",sans-serif}
.music .f{text-anchor:middle;font-size:1.78px}
.music .mid{text-anchor:middle}
.music .end{text-anchor:end}
.music .slant,.music .offer{font-style:italic}
.music .strong,.music .on{font-weight:700}
.music .on.offer{font-weight:400}
.music .on{fill:#fff}
.music .quiet{fill:#555d66}
.music .staff{stroke:#4a525b}
.music .side{stroke:#8d96a0}
.play{stroke:#14507d;stroke-width:.3}
.back{stroke:#a03c00;stroke-width:.22;stroke-dasharray:.5 .36}
rect.back{fill:#fff;stroke-dasharray:none}
.one{fill:#fff;stroke:#14507d;stroke-width:.26}
.two{fill:#a03c00;stroke:none}
.ring{fill:#fff;stroke:#a03c00;stroke-width:.22}
.first{fill:#fff;stroke:#5c3c8c;stroke-width:.32}
.level{fill:#fff;stroke:#1c2126;stroke-width:.22}
.open{fill:#fff;stroke:#555d66;stroke-width:.2;stroke-dasharray:.4 .3}
.flag,.white{fill:#fff;stroke:#1c2126;stroke-width:.14}
.black{fill:#1c2126;stroke:#1c2126;stroke-width:.14}
.onwhite,.onblack{stroke:none;font-weight:700;font-family:system-ui,"Segoe UI",Roboto,"DejaVu Sans",sans-serif}
.onwhite{fill:#1c2126}
.onblack{fill:#fff}
.music .bow{stroke-width:.2}
@media screen and (prefers-color-scheme:dark){
.music,.level,.flag{stroke:#e6e9ec}
.ink,.plain,.offer,.strong{fill:#e6e9ec}
.music .on{fill:#14181d}
.music .quiet{fill:#a9b2bb}
.music .staff{stroke:#b3bac2}
.music .side{stroke:#7d8791}
.play,.one{stroke:#7fc0f5}
.back,.ring{stroke:#ffab70}
.two{fill:#ffab70}
.first{stroke:#c3a6f0}
.open{stroke:#a9b2bb}
rect.back,.one,.ring,.first,.level,.open,.flag{fill:#14181d}
}
)";
}

}  // namespace fingerturn
