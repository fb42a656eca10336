// The browser, and pages opened in it as a reader would see them.
import { existsSync, readdirSync } from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { chromium } from "playwright-core";

const pages = path.resolve("pages");

/** All pages that `run` made, as names below pages/; of the folders only the index is new. */
export function allPages() {
  const single = readdirSync(pages).filter((name) => name.endsWith(".html"));
  return [...single, "folder/index.html", "pictures/index.html"];
}

export function fileOf(name) {
  return path.join(pages, name);
}

export function launch() {
  const executablePath = ["/usr/bin/chromium", "/usr/bin/chromium-browser"].find(existsSync);
  if (!executablePath) throw new Error("there is no chromium");
  // The browser refuses its sandbox to root. It only ever sees the files made here.
  const args = process.getuid() === 0 ? ["--no-sandbox"] : [];
  return chromium.launch({ executablePath, args });
}

/** Opens a page; what it says to the console, and what it asks for, is kept in `heard`. */
export async function open(browser, name, { width = 1200, colorScheme = "light" } = {}) {
  const page = await browser.newPage({ viewport: { width, height: 900 }, colorScheme });
  const heard = { console: [], requests: [] };
  page.on("console", (message) => heard.console.push(message.text()));
  page.on("pageerror", (error) => heard.console.push(String(error)));
  page.on("dialog", (dialog) => heard.console.push(`dialog: ${dialog.message()}`));
  page.on("request", (request) => heard.requests.push(request.url()));
  const url = pathToFileURL(fileOf(name)).href;
  await page.goto(url, { waitUntil: "load" });
  return { page, heard, url };
}
