#include "write/page/html_style.hpp"

namespace fingerturn {
namespace {

/// Sizes are in em, so that a page grows with the letters its reader has chosen. On a narrow page
/// every piece of a system stands for itself with the names of its rows; on a wide one, and in
/// print, they stand side by side and only the first has them. Print is dark on white. A fold that
/// is closed is left out of the print, one that was opened is printed.
constexpr std::string_view kStyle = R"css(:root{color-scheme:light dark}
*{box-sizing:border-box}
html{-webkit-text-size-adjust:100%;text-size-adjust:100%}
body{margin:0 auto;padding:1rem .5rem 2rem;max-width:50rem;background:#fff;color:#1c2126;font:1rem/1.45 system-ui,"Segoe UI",Roboto,"DejaVu Sans",sans-serif;overflow-wrap:anywhere}
h1,h2,h3{line-height:1.2;margin:1.6em 0 .4em}
h1{font-size:1.6rem;margin-top:0}
h2{font-size:1.25rem}
h3{font-size:1rem}
p{margin:.3em 0}
a{color:#14507d}
.quiet{color:#555d66}
.hidden{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
.system{margin:1.2rem 0;--names:4.8em;font-size:.9rem}
.piece{display:inline-table;white-space:normal;vertical-align:top;margin-bottom:1rem;table-layout:fixed;border-collapse:collapse;width:calc(var(--notes) + var(--names));line-height:1.2}
.piece caption{text-align:left;font-weight:700;padding-left:calc(var(--names) + .2em)}
.piece caption{height:1.2em}
.piece caption.on{font-weight:400;color:#555d66}
.piece .names{width:var(--names)}
.piece th,.piece td{padding:0;vertical-align:bottom}
.piece th{font-weight:400;font-size:.92em;text-align:right;padding-right:.5em;color:#555d66;position:relative}
.piece th.hand{text-align:left;font-weight:700;color:inherit;font-size:1em;padding:0}
.piece tr.hand-row{height:1.7em}
.piece tr{height:1.25em}
.piece .finger td{overflow-wrap:anywhere}
.piece td,.piece th{line-height:1.1}
.piece td{text-align:center;overflow-wrap:normal}
.piece .word td{font-size:.92em}
.piece .blank{display:none}
.piece tr.note td{font-weight:700}
.piece tr.swing-row td,.piece tr.swing-row th{padding:0;line-height:0;font-size:1em}
.piece svg{display:block}
.piece .opened{font-style:italic}
.watch,.contents{padding-left:1.3em}
img{max-width:100%;height:auto}
.watch li{margin:.3em 0}
.level{font-weight:700}
details{margin:1rem 0}
summary{cursor:pointer;font-weight:700;padding:.3em 0}
.reasons{border-collapse:collapse;width:100%;font-size:.9rem}
.reasons th,.reasons td{text-align:left;vertical-align:top;padding:.35em .6em .35em 0;border-top:1px solid #c3cad1}
.reasons th,.reasons td:first-child{overflow-wrap:normal}
.reasons .name{min-width:3.6em}
.reasons .cue{font-weight:700}
.samples{list-style:none;padding:0;display:grid;grid-template-columns:repeat(auto-fill,minmax(min(19rem,100%),1fr));gap:.6rem 1rem;font-size:.9rem}
.samples li{display:flex;gap:.7rem;align-items:center;break-inside:avoid}
.samples svg{flex:none;font-size:.75rem}
.words{font-size:.9rem}
.words dt{font-weight:700}
.words dd{margin:0 0 .3em}
.rows{display:grid;grid-template-columns:max-content 1fr;gap:.1em .9em}
.rows dd{grid-column:2;margin:0}
.caution{border:1px solid #8d96a0;border-radius:.4em;padding:.6em .9em;margin-top:1.6rem;break-inside:avoid}
.caution h2{margin:0 0 .2em;font-size:1rem}
:focus-visible{outline:3px solid #14507d;outline-offset:2px}
@media screen and (min-width:50em),print{
.piece .stacked{height:calc(var(--lines)*1.15em)}
.system{white-space:nowrap;font-size:.75rem}
.piece{margin-bottom:0}
.piece .blank{display:table-row}
.piece+.piece{--names:0em}
.piece+.piece th{padding-left:0;padding-right:0}
.piece+.piece th>*,.piece+.piece .on>*{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
}
@media screen and (prefers-color-scheme:dark){
body{background:#14181d;color:#e6e9ec}
a{color:#7fc0f5}
.quiet,.piece th,.piece caption.on{color:#a9b2bb}
.reasons th,.reasons td{border-color:#4a545e}
:focus-visible{outline-color:#7fc0f5}
}
@page{margin:12mm}
@media print{
:root{color-scheme:light}
html{font-size:14.5px}
.system{margin:.8rem 0}
body{padding:0;max-width:none}
.system,.watch li,.reasons tr,dt{break-inside:avoid}
h1,h2,h3,dt{break-after:avoid}
.passage+.passage,nav+main{break-before:page}
details:not([open]){display:none}
a{color:inherit;text-decoration:none}
}
)css";

}  // namespace

std::string_view page_style() noexcept { return kStyle; }

}  // namespace fingerturn
