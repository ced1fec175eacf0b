// How the pages look: what axe-core finds, widths, large text, forced colours, sizes to touch.

import assert from "node:assert/strict";
import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before } from "node:test";
import { axe, choose_file, force_colours, picture, press, until } from "./lib/page.mjs";
import { in_every_engine } from "./lib/suite.mjs";
import { abort_writes, add_lot, answer, choose, go, pick, start_wig, started } from "./lib/app.mjs";

const DEMO = JSON.parse(await readFile(new URL("../../demo-data/copper-bob.wig.json", import.meta.url), "utf8")).wig;
const DRESSING = JSON.parse(await readFile(new URL("../../demo-data/evening-dressing.wig.json", import.meta.url), "utf8")).wig;
let directory;
before(async () => { directory = await mkdtemp(join(tmpdir(), "weftbook-looks-")); });
after(() => rm(directory, { recursive: true }));

const demo = (tab) => ({ name: `demo-${tab}`, hash: `#/wig/${DEMO}/${tab}` });

/** The helper's side, one line ticked and one opened. */
async function open_helper(page) {
  await until(page, () => document.querySelector(".sheet") !== null);
  await until(page, () => document.querySelector("section[aria-labelledby=hand-link] button") !== null);
  await page.evaluate(() => document.querySelector("section[aria-labelledby=hand-link] button").click());
  await page.evaluate((link) => { location.href = link; }, await until(page, () => document.getElementById("made-link")?.value));
  await until(page, () => document.querySelectorAll(".card.line").length > 2);
  await page.evaluate(() => {
    const [first, second] = document.querySelectorAll(".card.line");
    for (const button of [first.querySelector("button.answer"), second.querySelector("button.answer:last-of-type")]) {
      // Answers are drafts: on the next visit they are still there.
      if (button.getAttribute("aria-pressed") !== "true") button.click();
    }
  });
  await until(page, () => document.querySelectorAll(".card.line .fields").length > 1);
}

/** Every page, with something on it. `ready`: what must stand there first. */
const PAGES = [
  { name: "wigs", hash: "#/" },
  { name: "start", hash: "#/start" },
  { ...demo("cap"), ready: open_zone },
  { ...demo("base"), ready: unfold_all },
  { ...demo("look"), ready: unfold_all },
  { ...demo("weft"), ready: async (page) => { await answer(page); await unfold_all(page); } },
  { ...demo("heat"), ready: async (page) => { await unfold_all(page); await choose(page, "curl-back", "curl"); } },
  { name: "dressing-colour", hash: `#/wig/${DRESSING}/colour`, ready: unfold_all },
  { ...demo("record"), ready: unfold_all },
  { ...demo("sheet"), ready: async (page) => { await until(page, () => document.querySelector(".sheet") !== null); await unfold_all(page); } },
  { name: "open", hash: "#/open" },
  { name: "helper", hash: `#/wig/${DEMO}/sheet`, ready: open_helper },
  { name: "fibres", hash: "#/fibres" },
  { name: "fibre", hash: "#/fibres/modacrylic", ready: unfold_all },
  { name: "find", hash: "#/find" },
  { name: "wefts", hash: "#/lots", ready: unfold_all },
  { name: "keep-safe", hash: "#/safe", ready: preview },
  { name: "units", hash: "#/units" },
  { name: "about", hash: "#/about" },
  { name: "missing", hash: "#/nowhere" },
];

async function open_zone(page) {
  await page.evaluate(() => document.querySelector('.zone-button[aria-expanded="false"]')?.click());
  await until(page, () => document.querySelector('.zone-button[aria-expanded="true"]') !== null);
}

async function unfold_all(page) {
  await page.evaluate(() => document.querySelectorAll("main details").forEach((each) => { each.open = true; }));
}

async function preview(page) {
  await choose_file(page, () => press(page, "button", "Choose a file"), join(directory, "backup.json"));
  await until(page, () => document.getElementById("preview") !== null);
}

/** The app with a wig and a weft of its own, so that banners and cards are there. */
async function furnished(given) {
  const { page } = await started(given, {
    first: [abort_writes, () => { StorageManager.prototype.persisted = async () => false; }],
  });
  await start_wig(page, "Organ-blower");
  await go(page, `${await page.evaluate(() => location.hash.replace("/cap", "/weft"))}`);
  await add_lot(page, {});
  await go(page, "#/safe");
  await press(page, "button", "Save a backup");
  await writeFile(join(directory, "backup.json"), (await given.browser.download(/^weftbook-backup-/)).text);
  return page;
}

async function on_every_page(page, act) {
  const found = [];
  for (const each of PAGES) {
    await go(page, each.hash);
    await each.ready?.(page);
    for (const line of await act(each)) found.push(`${each.name}: ${line}`);
  }
  return [...new Set(found)];
}

/** What is wider than the window, said by name; [] is the wish. What scrolls inside itself may be. */
const too_wide = (page) => page.evaluate(() => {
  const root = document.documentElement;
  if (root.scrollWidth <= root.clientWidth) return [];
  const inside = (element) => { for (let up = element; up; up = up.parentElement) if (/auto|scroll|hidden/.test(getComputedStyle(up).overflowX) && up !== document.body && up !== root) return true; return false; };
  const wide = Array.from(document.querySelectorAll("body *")).filter((each) => each.getBoundingClientRect().right > root.clientWidth + 0.5 && !inside(each));
  return [`${root.scrollWidth} > ${root.clientWidth} px: ${wide.slice(0, 4).map((each) => `${each.tagName.toLowerCase()}#${each.id}.${each.getAttribute("class") ?? ""}`).join(", ")}`];
});

/** Controls smaller than a thumb needs. Links within a sentence may be. */
const too_small = (page) => page.evaluate(() => {
  const controls = Array.from(document.querySelectorAll("button, summary, nav a, a.button, select, textarea, input, .actions a, h2 a"))
    .filter((each) => each.checkVisibility() && !each.closest("svg"));
  const box = (each) => {
    // A radio's label belongs to what can be touched.
    const all = [each, ...(/radio|checkbox/.test(each.type ?? "") ? [each.parentElement] : [])].map((one) => one.getBoundingClientRect());
    return { width: Math.max(...all.map(({ width }) => width)), height: Math.max(...all.map(({ height }) => height)) };
  };
  return controls.map((each) => [each, box(each)]).filter(([, { width, height }]) => height < 43.5 || width < 43.5)
    .map(([each, { width, height }]) => `${each.tagName.toLowerCase()} “${(each.innerText || each.id).slice(0, 30)}” ${Math.round(width)} × ${Math.round(height)}`);
});

/** Buttons that can only be reached by scrolling sideways. */
const out_of_reach = (page) => page.evaluate(() => Array.from(document.querySelectorAll("main button, main input, main select"))
  .filter((each) => each.checkVisibility() && each.getBoundingClientRect().right > document.documentElement.clientWidth + 0.5)
  .map((each) => `${each.tagName.toLowerCase()} “${each.getAttribute("aria-label") ?? (each.innerText || each.id)}” is out of reach`));

for (const dark of [false, true]) {
  const shade = dark ? "dark" : "light";
  in_every_engine(`looks, ${shade}`, ({ check, engine }) => {
    check(`axe finds nothing on any page, ${shade}`, async (given) => {
      const page = await furnished(given);
      assert.equal(await page.evaluate(() => matchMedia("(prefers-color-scheme: dark)").matches), dark);
      assert.deepEqual(await on_every_page(page, async ({ name }) => {
        await picture(page, `${name}-${engine}-${shade}-768`);
        return axe(page);
      }), []);

      // The failure that stays on the screen.
      await go(page, "#/");
      await page.evaluate(() => { window.aborting = true; });
      await go(page, "#/start");
      await page.evaluate(() => document.getElementById("start-name").focus());
      await page.keyboard.type("Chandler");
      await pick(page, "start-size", "large");
      await press(page, "button", "Start");
      await until(page, () => document.getElementById("not-saved") !== null);
      await picture(page, `not-saved-${engine}-${shade}-768`);
      assert.deepEqual(await axe(page), []);
    });

    if (dark) return;
    check("nothing is wider than the window at any width, nor with text twice as large; targets are large enough", async (given) => {
      const page = await furnished(given);
      const found = [];
      for (const [width, height] of [[320, 640], [360, 740], [768, 1024], [1440, 900]]) {
        await page.setViewport({ width, height });
        found.push(...(await on_every_page(page, async ({ name }) => {
          await picture(page, `${name}-${engine}-light-${width}`);
          const small = width === 360 ? await too_small(page) : [];
          return [...(await too_wide(page)), ...(await out_of_reach(page)), ...small].map((line) => `${width} px: ${line}`);
        })));
      }
      // 200 % text on an ordinary screen.
      await page.setViewport({ width: 1280, height: 900 });
      found.push(...(await on_every_page(page, async ({ name }) => {
        await page.evaluate(() => { document.documentElement.style.fontSize = "200%"; });
        await picture(page, `${name}-${engine}-light-1280-200`);
        const wide = await too_wide(page);
        await page.evaluate(() => { document.documentElement.style.fontSize = ""; });
        return wide.map((line) => `200 %: ${line}`);
      })));
      assert.deepEqual(found, []);
    });

    check("where colours are forced, drawings, edges and the focus are still seen", async (given) => {
      const page = await furnished(given);
      // Only Chromium can be told to force colours.
      if (!(await force_colours(page))) return;
      assert.ok(await page.evaluate(() => matchMedia("(forced-colors: active)").matches));
      const found = await on_every_page(page, async ({ name }) => {
        await picture(page, `${name}-${engine}-forced-768`);
        return page.evaluate(() => {
          const current = (each) => getComputedStyle(each).borderBottomColor;
          const edges = Array.from(document.querySelectorAll(".tabs a"), (each) => [each.hasAttribute("aria-current"), current(each)]);
          const back = getComputedStyle(document.body).backgroundColor;
          const lost = [];
          const here = edges.find(([is_current]) => is_current)?.[1];
          if (edges.some(([is_current, colour]) => !is_current && colour === here)) lost.push("the page that stands is not marked among its tabs");
          for (const each of document.querySelectorAll("main svg path, main svg line, main svg polyline, main svg text")) {
            const style = getComputedStyle(each);
            const fill = style.fill;
            const stroke = style.strokeWidth === "0px" ? "none" : style.stroke;
            if (each.tagName === "text" ? fill === back : [fill, stroke].every((one) => one === back) && !each.hasAttribute("data-target")) {
              lost.push(`svg ${each.tagName} ${each.getAttribute("class")} has the background's colour`);
            }
          }
          for (const each of document.querySelectorAll("main button:not(.plain, .zone-button), main input:not([type=radio], [type=checkbox]), main select, main textarea")) {
            const style = getComputedStyle(each);
            if (each.checkVisibility() && (style.borderTopStyle === "none" || style.borderTopWidth === "0px")) {
              lost.push(`${each.tagName.toLowerCase()} ${each.id || each.innerText} has no edge`);
            }
          }
          return [...new Set(lost)];
        });
      });
      assert.deepEqual(found, []);
    });
  }, { dark });
}
