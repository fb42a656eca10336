// Study notes as a renderer of CommonMark with tables shows them.
import assert from "node:assert/strict";
import { readdirSync, readFileSync } from "node:fs";
import { test } from "node:test";
import MarkdownIt from "markdown-it";

// HTML and addresses would come through here if the text let them.
const renderer = new MarkdownIt({ html: true, linkify: true });
const notes = readdirSync("pages").filter((name) => name.endsWith(".md"));
const read = (name) => readFileSync(`pages/${name}`, "utf8");

function textOf(tokens) {
  return tokens
    .flatMap((token) => (token.children ? textOf(token.children) : [token.content]))
    .join("");
}

for (const name of notes) {
  test(`${name} renders as tables, lists and headings`, () => {
    const tokens = renderer.parse(read(name), {});
    const all = tokens.flatMap((token) => [token, ...(token.children ?? [])]);
    const count = (type) => all.filter((token) => token.type === type).length;
    assert.equal(count("html_block") + count("html_inline"), 0);
    assert.equal(count("link_open"), 0);
    assert.equal(count("image"), 0);
    assert.equal(count("code_block"), 0);
    assert.ok(count("table_open") >= 1);
    assert.ok(count("h1") + tokens.filter((token) => token.tag === "h1").length >= 1);
    // A line that should have been a table would show its strokes.
    for (const token of tokens) {
      if (token.type === "inline" && !name.startsWith("hostile")) assert.ok(!token.content.includes(" | "));
    }
    assert.match(textOf(tokens), /no medical advice/);
  });

  test(`${name} has as many cells in every row of a table`, () => {
    let cells = 0;
    let first = 0;
    for (const token of renderer.parse(read(name), {})) {
      if (token.type === "table_open") first = 0;
      if (token.type === "tr_open") cells = 0;
      if (token.type === "th_open" || token.type === "td_open") ++cells;
      if (token.type === "tr_close") {
        first = first || cells;
        assert.equal(cells, first);
      }
    }
  });
}

test("a hostile title is shown letter for letter", () => {
  const title = readFileSync("pages/hostile.passage", "utf8").match(/^passage: (.*)$/m)[1];
  for (const name of ["hostile.md", "hostile-compared.md", "hostile-plan.md"]) {
    const tokens = renderer.parse(read(name), {});
    const heading = tokens.findIndex((token) => token.type === "heading_open");
    const shown = textOf([tokens[heading + 1]]);
    assert.equal(shown.replace(/: what to practise first$/, ""), title);
  }
});

test("every row of the tables is there", () => {
  const html = renderer.render(read("scale.md"));
  for (const row of ["note", "finger", "rotation", "prepare", "play", "forearm", "crossing"]) {
    assert.match(html, new RegExp(`<td>${row}</td>`));
  }
});
