// What a page does in a browser, at each width, light and dark.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import path from "node:path";
import { after, before, test } from "node:test";
import { allPages, launch, open } from "./browser.mjs";

const widths = [360, 768, 1024, 1280];
const schemes = ["light", "dark"];
const axe = readFileSync("node_modules/axe-core/axe.min.js", "utf8");

let browser;
before(async () => (browser = await launch()));
after(() => browser.close());

/** What reaches beyond the page or its own cell. */
function overflowing() {
  const root = document.documentElement;
  const found = root.scrollWidth > innerWidth ? [`page ${root.scrollWidth}`] : [];
  for (const element of document.querySelectorAll("body *")) {
    if (element.closest(".hidden") || element.parentElement.closest("svg")) continue;
    const box = element.getBoundingClientRect();
    if (box.width > 1 && (box.right > innerWidth + 0.5 || box.left < -0.5)) {
      found.push(`${element.outerHTML.slice(0, 80)} ends at ${box.right}`);
    }
    if (element.tagName === "TD" && element.scrollWidth > element.clientWidth + 1) {
      found.push(`cell ${element.outerHTML.slice(0, 80)}`);
    }
  }
  return found.slice(0, 5);
}

/** Music that is shown twice, not at all, or so small that its fingers cannot be read. */
function unreadable() {
  const found = [];
  const shown = [...document.querySelectorAll(".systems")].filter((one) => one.offsetHeight > 0);
  const all = document.querySelectorAll(".systems").length;
  if (2 * shown.length !== all) found.push(`${shown.length} of ${all} are shown`);
  for (const finger of document.querySelectorAll(".systems .f text")) {
    const height = finger.getBoundingClientRect().height;
    if (height > 0 && height < 9) found.push(`${finger.outerHTML} is ${height} high`);
  }
  return found.slice(0, 5);
}

/** Words in pictures of too little contrast to the shape behind them (WCAG 2.2, 1.4.3: 4.5). */
function faintWords() {
  const numbers = (colour) => colour.match(/[\d.]+/g).slice(0, 3).map(Number);
  const luminance = (colour) => {
    const [r, g, b] = numbers(colour)
      .map((part) => part / 255)
      .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const contrast = (one, other) => {
    const [low, high] = [luminance(one), luminance(other)].sort((a, b) => a - b);
    return (high + 0.05) / (low + 0.05);
  };
  const paper = getComputedStyle(document.body).backgroundColor;
  // A shape that is drawn once and referred to has its look where it is drawn.
  const drawnAs = (id) => {
    const drawn = document.getElementById(id);
    return drawn.tagName === "g" ? drawn.lastElementChild : drawn;
  };
  /** The corners of a line, which is written in steps: M, then h, v and l. */
  const cornersOf = (line) => {
    let [x, y] = [0, 0];
    return [...line.getAttribute("d").matchAll(/([Mhvl])([^Mhvl]*)/g)].map(([, letter, numbers]) => {
      const steps = numbers.match(/-?(\d+(\.\d+)?|\.\d+)/g).map(Number);
      if (letter === "h") x += steps[0];
      else if (letter === "v") y += steps[0];
      else if (letter === "l") [x, y] = [x + steps[0], y + steps[1]];
      else [x, y] = steps;
      return { x, y };
    });
  };
  const looks = new Map();
  /** Every rounded plate of a picture: its look, its middle and half its size. */
  const platesOf = (svg) => {
    if (looks.has(svg)) return looks.get(svg);
    const plates = [...svg.querySelectorAll("rect")].map((look) => ({ look, x: 0, y: 0 }));
    for (const use of svg.querySelectorAll("use")) {
      const [x, y] = ["x", "y"].map((name) => Number(use.getAttribute(name)));
      plates.push({ look: drawnAs(use.getAttribute("href").slice(1)), x, y });
    }
    for (const line of svg.querySelectorAll("path.at")) {
      const look = drawnAs(line.getAttribute("style").match(/#m-([\w-]+)/)[1]);
      for (const corner of cornersOf(line)) plates.push({ look, ...corner });
    }
    const found = plates.filter(({ look }) => look.tagName === "rect");
    looks.set(svg, found);
    return found;
  };
  const behind = (word, place) => {
    const [x, y] = ["x", "y"].map((name) => Number(word.getAttribute(name).split(" ")[place]));
    const around = platesOf(word.ownerSVGElement).filter((plate) => {
      const [left, top, width, height] = ["x", "y", "width", "height"].map((name) =>
        Number(plate.look.getAttribute(name)),
      );
      const [across, down] = [x - plate.x - left, y - plate.y - top];
      return across >= 0 && across <= width && down >= 0 && down <= height;
    });
    return around.length > 0 ? getComputedStyle(around.at(-1).look).fill : paper;
  };
  const words = [...document.querySelectorAll("svg text")];
  return words
    .filter((word) => word.getBoundingClientRect().width > 0)
    .filter((word) =>
      word
        .getAttribute("x")
        .split(" ")
        .some((_, place) => contrast(getComputedStyle(word).fill, behind(word, place)) < 4.5),
    )
    .map((word) => word.outerHTML);
}

for (const name of allPages()) {
  for (const width of widths) {
    for (const colorScheme of schemes) {
      test(`${name} at ${width}, ${colorScheme}`, async () => {
        const { page, heard, url } = await open(browser, name, { width, colorScheme });
        assert.deepEqual(heard.console, []);
        const folder = path.dirname(url) + "/";
        const others = heard.requests.filter((request) => request !== url && request !== "data:,");
        if (name.startsWith("pictures/")) {
          assert.equal(others.length, 6);
          for (const request of others) assert.ok(request.startsWith(folder), request);
        } else {
          assert.deepEqual(others, []);
        }
        assert.deepEqual(await page.evaluate(overflowing), []);
        assert.deepEqual(await page.evaluate(unreadable), []);
        assert.deepEqual(await page.evaluate(faintWords), []);
        assert.equal(await page.evaluate(() => window.struck), undefined);
        const dark = await page.evaluate(
          () => getComputedStyle(document.body).backgroundColor !== "rgb(255, 255, 255)",
        );
        assert.equal(dark, colorScheme === "dark");
        await page.close();
      });
    }
  }
  test(`${name} can be used by everybody (axe-core)`, async () => {
    for (const colorScheme of schemes) {
      // Of a long page a few systems tell as much as all.
      const { page } = await open(browser, name, { width: 800, colorScheme });
      await page.evaluate(() =>
        [...document.querySelectorAll(".systems > *")].slice(12).forEach((system) => system.remove()),
      );
      await page.evaluate(axe);
      const { violations } = await page.evaluate(() => window.axe.run());
      assert.deepEqual(
        violations.map((found) => `${found.id}: ${found.nodes[0].html.slice(0, 120)}`),
        [],
      );
      await page.close();
    }
  });
}

test("the fold with the cues opens by the keyboard and fits a phone", async () => {
  const { page } = await open(browser, "scale.html", { width: 360 });
  const cue = page.getByText("thumb passes under");
  assert.equal(await cue.first().isVisible(), false);
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  assert.equal(await cue.first().isVisible(), true);
  assert.deepEqual(await page.evaluate(overflowing), []);
  await page.close();
});

test("a page with letters twice as large still fits", async () => {
  const { page } = await open(browser, "scale.html", { width: 800 });
  await page.addStyleTag({ content: "html{font-size:200%}" });
  await page.setViewportSize({ width: 799, height: 900 });
  assert.deepEqual(await page.evaluate(overflowing), []);
  await page.close();
});

test("all passages are reached from the contents", async () => {
  const { page } = await open(browser, "all.html");
  const links = await page.locator("nav a").all();
  assert.equal(links.length, 6);
  for (const link of links) {
    await link.click();
    const heading = page.locator(new URL(page.url()).hash);
    assert.equal(await heading.innerText(), await link.innerText());
  }
  await page.close();
});

test("two thousand notes are all there", async () => {
  const { page } = await open(browser, "long.html");
  const fingers = await page.locator(".wide svg[role=img] .f").allTextContents();
  assert.equal(fingers.join("").length, 134 * 15);
  await page.close();
});
