#include "write/page/html_style.hpp"

namespace fingerturn {
namespace {

/// Sizes are in em, so that a page grows with the letters its reader has chosen. Music is set
/// twice: for sheets and screens, and in short systems for telephones. Print is dark on white. A
/// fold that is closed is left out of the print, one that was opened is printed.
constexpr std::string_view kStyle = R"css(:root{color-scheme:light dark}
*{box-sizing:border-box}
html{-webkit-text-size-adjust:100%;text-size-adjust:100%}
body{margin:0 auto;padding:1rem .5rem 2rem;max-width:62rem;background:#fff;color:#1c2126;font:1rem/1.45 system-ui,"Segoe UI",Roboto,"DejaVu Sans",sans-serif;overflow-wrap:anywhere}
h1,h2,h3{line-height:1.2;margin:1.6em 0 .4em}
h1{font-size:1.6rem;margin-top:0}
h2{font-size:1.25rem}
h3{font-size:1rem}
p{margin:.3em 0}
a{color:#14507d}
.quiet{color:#555d66}
.head{display:flex;flex-wrap:wrap;justify-content:space-between;gap:0 2em}
.music{display:block;overflow:visible}
.systems .music{width:100%;height:auto;margin:1.2rem 0}
.once{font-size:.85rem}
.once h2{font-size:1rem;margin-top:1em}
.once ul{margin:.3em 0;padding-left:1.4em}
.steps{margin:.3em 0;padding-left:1.6em;font-size:.92rem;line-height:1.35}
.steps ul{margin:0;padding-left:1.2em}
.wide{display:none}
.outlines{position:absolute}
.lines{display:none}
.map{margin:.6rem 0}
.map svg{display:block;width:100%;height:1.4em}
.map figcaption{font-size:.85rem;color:#555d66}
.m0{fill:#e9edf2}
.m1{fill:#f0c7a8}
.m2{fill:#dd9560}
.m3{fill:#c4652a}
.m4{fill:#8a3300}
.shown{fill:#14507d}
.watch,.contents{padding-left:1.6em}
img{max-width:100%;height:auto}
.watch li{margin:.3em 0}
.grade{font-weight:700}
details{margin:1rem 0}
summary{cursor:pointer;font-weight:700;padding:.3em 0}
.study{border-collapse:collapse;width:100%;font-size:.9rem}
.study th,.study td{text-align:left;vertical-align:top;padding:.35em .6em .35em 0;border-top:1px solid #8d96a0}
.study thead th,.study td:first-child{overflow-wrap:normal}
.study th[scope=row]{min-width:3.6em}
.study td:nth-child(3){font-weight:700}
.figures{border-collapse:collapse;font-size:.9rem}
.figures th,.figures td{padding:.2em 0 .2em 1.2em;text-align:right;border-bottom:1px solid #8d96a0}
.figures th:first-child{padding-left:0;text-align:left}
.side{display:flex;flex-wrap:wrap;align-items:start;gap:1em 3em}
.names{display:grid;grid-template-columns:auto 1fr;gap:.2em .8em}
.names dt{font-weight:700}
.names dd{margin:0}
.legend{border-top:1px solid #8d96a0;margin-top:1.6rem;padding-top:.6rem;font-size:.85rem}
.legend ul{list-style:none;margin:0;padding:0;display:flex;flex-wrap:wrap;gap:.3em 1.4em}
.legend li{display:flex;gap:.4em;align-items:center;break-inside:avoid}
.legend svg{flex:none}
.sources{font-size:.9rem}
.sources dt{font-weight:700}
.sources dd{margin:0 0 .3em}
.caution{margin-top:1rem;font-size:.85rem;break-inside:avoid}
.caution h2{margin:0 0 .2em;font-size:1em}
:focus-visible{outline:3px solid #14507d;outline-offset:2px}
@media screen and (min-width:40em){
.wide{display:block}
.narrow{display:none}
}
@media screen and (prefers-color-scheme:dark){
body{background:#14181d;color:#e6e9ec}
a{color:#7fc0f5}
.quiet,.map figcaption{color:#a9b2bb}
.m0{fill:#262d35}
.m1{fill:#5a3a22}
.m2{fill:#99592a}
.m3{fill:#d98445}
.m4{fill:#ffc79a}
.shown{fill:#7fc0f5}
:focus-visible{outline-color:#7fc0f5}
}
@page{margin:12mm;@bottom-right{content:counter(page)}}
@media print{
:root{color-scheme:light}
html{font-size:13px}
body{padding:0;max-width:none}
.wide{display:block}
.narrow,.sources,.watch a{display:none}
.systems .music{margin:.5rem 0;break-inside:avoid}
.steps,.once{columns:2;column-gap:2em}
.once section{break-inside:avoid}
.place h2{font-size:1.1rem;margin:.7em 0 .1em}
.place>p{font-size:.92rem;margin:.1em 0;break-inside:avoid;break-after:avoid}
.place .systems .music{margin:.2rem 0}
.place~.legend{margin-top:.6rem;padding-top:.2rem}
.once section:first-child h2{margin-top:0}
.watch li,.study tr,.legend{break-inside:avoid}
h1,h2,h3{break-after:avoid}
h1{margin-bottom:.2em}
.passage+.passage,nav+main{break-before:page}
details:not([open]){display:none}
a{color:inherit;text-decoration:none}
.way{display:none}
.lines{display:block;break-inside:avoid}
.lines div{height:8mm;border-bottom:1px solid #8d96a0}
.place~.lines{display:none}
.place .steps{font-size:.85rem;line-height:1.25}
}
)css";

}  // namespace

std::string_view page_style() noexcept { return kStyle; }

}  // namespace fingerturn
