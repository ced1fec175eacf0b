// What a test does on a page: find by role and name as a person would, wait, type, look with axe.
// All through `evaluate`, because puppeteer's own waiting needs `eval`, which the page's policy forbids.

import { readFile, mkdir } from "node:fs/promises";
import { createRequire } from "node:module";
import { join } from "node:path";

const AXE = readFile(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** Polls `look(...given)` in the page until it answers something true, and returns that. */
export async function until(page, look, ...given) {
  return until_here(() => page.evaluate(look, ...given), `until ${look} ${JSON.stringify(given)}`);
}

/** The same with a look from the test's side. */
export async function until_here(look, what = String(look), patience_ms = 20_000) {
  const give_up = Date.now() + patience_ms;
  let last = null;
  do {
    try {
      const value = await look();
      if (value) return value;
      last = null;
    } catch (error) {
      // A page that is just being replaced cannot be asked.
      last = error;
    }
    await new Promise((later) => setTimeout(later, 25));
  } while (Date.now() < give_up);
  throw new Error(`waited in vain: ${what}${last ? `\nlast error: ${last.message}` : ""}`);
}

// In the page: visible elements of a role with this accessible name (a plain subset of the rules that is
// enough for our own markup: aria-label, aria-labelledby, label, text).
function find_by_role(role, name) {
  const tags = {
    button: "button,input[type=button],input[type=submit],summary", link: "a[href]", textbox: "input:not([type]),input[type=text],input[type=search],textarea",
    heading: "h1,h2,h3,h4", checkbox: "input[type=checkbox]", radio: "input[type=radio]", combobox: "select", status: "output", alert: "",
    main: "main", spinbutton: "input[type=number]", img: "img",
  };
  const selector = [`[role="${role}"]`, tags[role]].filter(Boolean).join(",");
  const text = (element) => (element?.innerText ?? element?.textContent ?? "").replace(/\s+/g, " ").trim();
  const name_of = (element) => {
    const labelled = element.getAttribute("aria-labelledby");
    if (labelled) return labelled.split(/\s+/).map((id) => text(document.getElementById(id))).join(" ").trim();
    if (element.getAttribute("aria-label")) return element.getAttribute("aria-label").trim();
    if (element.labels?.length) return Array.from(element.labels, text).join(" ").trim();
    return text(element) || element.getAttribute("title") || element.getAttribute("alt") || "";
  };
  return Array.from(document.querySelectorAll(selector)).find((element) =>
    (element.getAttribute("role") ?? role) === role && element.checkVisibility() &&
    (name === null || (name instanceof RegExp ? name.test(name_of(element)) : name_of(element) === name))) ?? null;
}

/** The element of a role whose accessible name is (or, for a RegExp, matches) `name`; waits for it. */
export async function by_role(page, role, name = null) {
  const source = name instanceof RegExp ? { pattern: name.source, flags: name.flags } : name;
  return until_here(async () => {
    const handle = await page.evaluateHandle(new Function("role", "name", `
      if (name && name.pattern !== undefined) name = new RegExp(name.pattern, name.flags);
      return (${find_by_role})(role, name);`), role, source);
    return handle.asElement();
  }, `${role} named ${name}`);
}

/** The form field with this label. */
export async function by_label(page, label) {
  return until_here(async () => {
    const handle = await page.evaluateHandle((wanted) => {
      const found = Array.from(document.querySelectorAll("label")).find((each) => each.innerText.replace(/\s+/g, " ").trim() === wanted);
      return found?.control ?? null;
    }, label);
    return handle.asElement();
  }, `a field labelled ${label}`);
}

export async function press(page, role, name) {
  // A tab in the background draws nothing, and clicking waits for a drawing.
  await page.bringToFront();
  const element = await by_role(page, role, name);
  await element.click();
  return element;
}

/** Types key by key, as saving races show only then. */
export async function type_into(page, label, text) {
  await page.bringToFront();
  const field = await by_label(page, label);
  await field.focus();
  await field.evaluate((element) => element.select?.());
  await page.keyboard.type(text);
  return field;
}

/** What has the focus: `{tag, name, ring}`, `ring` telling whether an outline or shadow shows it. */
export function focused(page) {
  return page.evaluate(() => {
    const element = document.activeElement;
    const style = getComputedStyle(element);
    const label = element.getAttribute("aria-label") ?? element.labels?.[0]?.innerText ?? element.innerText ?? "";
    const ring = (style.outlineStyle !== "none" && parseFloat(style.outlineWidth) > 0) || style.boxShadow !== "none";
    return { tag: element.tagName.toLowerCase(), id: element.id, name: label.replace(/\s+/g, " ").trim(), ring };
  });
}

/** Presses Tab until the focus is on something of this name, as a person without a pointer would. */
export async function tab_to(page, name, at_most = 200) {
  const passed = [];
  for (let pressed = 0; pressed < at_most; pressed += 1) {
    await page.keyboard.press("Tab");
    const now = await focused(page);
    if (name instanceof RegExp ? name.test(now.name) : now.name === name) return now;
    passed.push(now.name || now.tag);
  }
  throw new Error(`Tab never came to ${name}; it passed ${passed.join(" | ")}`);
}

/** Switches forced colours on (Chromium only; false elsewhere). */
export async function force_colours(page) {
  if (!page.createCDPSession) return false;
  try {
    const session = await page.createCDPSession();
    await session.send("Emulation.setEmulatedMedia", { features: [{ name: "forced-colors", value: "active" }] });
    return true;
  } catch {
    return false;
  }
}

/** Runs `act`, which makes the page ask for a file, and gives it `path` (or cancels, for null). The
 *  browser's own dialog is kept shut: Firefox dismisses it by itself when a test drives it. */
export async function choose_file(page, act, path) {
  await page.evaluate(() => {
    const plain = HTMLInputElement.prototype.click;
    window.asked_for_file = null;
    HTMLInputElement.prototype.click = function (...given) {
      if (this.type !== "file") return plain.apply(this, given);
      HTMLInputElement.prototype.click = plain;
      window.asked_for_file = this;
      document.body.append(this);
    };
  });
  await act();
  await until(page, () => window.asked_for_file !== null);
  const input = await page.evaluateHandle(() => window.asked_for_file);
  if (path === null) await input.evaluate((element) => element.dispatchEvent(new Event("cancel")));
  else await input.asElement().uploadFile(path);
  await input.evaluate((element) => element.remove());
}

/** All the page's visible text. */
export function text_of(page) {
  return page.evaluate(() => document.body.innerText);
}

/** What axe-core objects to, as short lines; [] is the wish. Runs under the page's own policy. */
export async function axe(page) {
  await page.evaluate(await AXE);
  return page.evaluate(async () => {
    const { violations } = await axe.run(document, { resultTypes: ["violations"] });
    return violations.flatMap(({ id, help, nodes }) => nodes.map((node) => `${id}: ${help} at ${node.target.join(" ")}`));
  });
}

/** Saves a picture under WEFTBOOK_PICTURES, when that is set. */
export async function picture(page, name) {
  const directory = process.env.WEFTBOOK_PICTURES;
  if (!directory) return;
  await mkdir(directory, { recursive: true });
  await page.screenshot({ path: join(directory, `${name}.png`), fullPage: true });
}
