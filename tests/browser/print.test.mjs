// Paper: A4 and Letter, always dark on white, no page empty, no system cut.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { after, before, test } from "node:test";
import { fileOf, launch, open } from "./browser.mjs";

let browser;
before(async () => (browser = await launch()));
after(() => browser.close());

/** The words of each printed page with their places. */
async function printed(name, format, { landscape = false, prepare = async () => {} } = {}) {
  const { page } = await open(browser, name, { colorScheme: "dark" });
  await prepare(page);
  const file = fileOf(`${name.replaceAll("/", "-")}.${format}.pdf`);
  await page.pdf({ path: file, format, landscape, printBackground: true });
  const ribbons = await page.evaluate(
    () => [...document.querySelectorAll(".wide .end text")].filter((one) => one.textContent === "right").length,
  );
  await page.close();
  const text = execFileSync("pdftotext", ["-bbox", file, "-"], { encoding: "utf8", maxBuffer: 1 << 28 });
  const sheets = text.split("<page ").slice(1).map((sheet) => ({
    width: Number(sheet.match(/width="([\d.]+)"/)[1]),
    words: [...sheet.matchAll(/<word xMin="([\d.-]+)" yMin="([\d.-]+)" xMax="([\d.-]+)" yMax="([\d.-]+)">([^<]*)</g)].map(
      ([, left, top, right, bottom, word]) => ({
        left: Number(left),
        top: Number(top),
        right: Number(right),
        bottom: Number(bottom),
        word,
      }),
    ),
  }));
  return { file, ribbons, sheets };
}

/** How many ribbons are whole on a page: the names of their lines end at one edge, below each other. */
function ribbonsOn({ words }) {
  const named = (name) => words.filter((one) => one.word === name);
  const lower = named("left");
  return named("right").filter((upper) =>
    lower.some(
      (other) =>
        Math.abs(other.right - upper.right) < 1 && other.top > upper.top && other.top < upper.top + 30,
    ),
  ).length;
}

for (const format of ["A4", "Letter"]) {
  for (const landscape of [false, true]) {
    for (const name of ["scale.html", "last-tram.html", "mixed.html", "all.html", "plan.html", "hostile.html"]) {
      test(`${name} on ${format}${landscape ? ", landscape" : ""}`, async () => {
        const { ribbons, sheets } = await printed(name, format, { landscape });
        let found = 0;
        for (const [number, sheet] of sheets.entries()) {
          assert.ok(sheet.words.length > 3, `page ${number + 1} is empty`);
          for (const { left, right, word } of sheet.words) {
            assert.ok(left >= 30 && right <= sheet.width - 30, `"${word}" in the margin`);
          }
          found += ribbonsOn(sheet);
        }
        assert.equal(found, ribbons);
      });
    }
  }
}

test("print is dark on white even where the screen is dark", async () => {
  const { file } = await printed("scale.html", "A4");
  const picture = execFileSync("pdftoppm", ["-r", "20", "-gray", "-f", "1", "-l", "1", file]);
  // A portable graymap: the header ends with its third line feed.
  let begin = 0;
  for (let line = 0; line < 3; ++line) begin = picture.indexOf(10, begin) + 1;
  const pixels = picture.subarray(begin);
  const light = pixels.filter((pixel) => pixel > 200).length;
  assert.ok(light / pixels.length > 0.8, `${light} of ${pixels.length} pixels are light`);
});

test("nothing of the music is left out of the print", async () => {
  const { page } = await open(browser, "scale.html");
  await page.emulateMedia({ media: "print" });
  const hidden = await page.evaluate(() =>
    [...document.querySelectorAll(".wide, .wide *")]
      .filter((one) => getComputedStyle(one).display === "none")
      .map((one) => one.outerHTML.slice(0, 80)),
  );
  assert.deepEqual(hidden, []);
  await page.close();
});

test("a closed fold is left out of the print, an open one is printed", async () => {
  const words = ({ sheets }) => sheets.flatMap((sheet) => sheet.words.map(({ word }) => word));
  const closed = await printed("scale.html", "A4");
  for (const word of ["cue"]) assert.ok(!words(closed).includes(word), word);
  const prepare = (page) =>
    page.evaluate(() => document.querySelectorAll("details").forEach((fold) => (fold.open = true)));
  const open = await printed("scale.html", "A4", { prepare });
  for (const word of ["cue"]) assert.ok(words(open).includes(word), word);
});
