// What a test does in the built app: start it, fill fields, start wigs, read answers. A field is named
// by its id, which is its slot ("girth"), with what it is of ("longest-back", "pack_price-<lot>").

import assert from "node:assert/strict";
import { built_folder } from "./server.mjs";
import { by_role, press, until } from "./page.mjs";

/** Today as the page sees it, "2026-11-25". */
export const today_in = (page) => page.evaluate(() => {
  const now = new Date();
  const two = (number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
});

/** Records the durability of every write from the first script on, in `window.durabilities`; read it
 *  before leaving the document. */
export function spy_on_writes() {
  window.durabilities = [];
  const plain = IDBDatabase.prototype.transaction;
  IDBDatabase.prototype.transaction = function (...given) {
    const transaction = plain.apply(this, given);
    if (transaction.mode === "readwrite") window.durabilities.push(transaction.durability ?? given[2]?.durability ?? "unsaid");
    return transaction;
  };
}

/** While `window.aborting` is true, aborts each write once the last of its rows was added with success. */
export function abort_writes() {
  window.aborting = false;
  window.aborted = 0;
  const pending = new Map();
  const plain = IDBObjectStore.prototype.add;
  IDBObjectStore.prototype.add = function (...given) {
    const request = plain.apply(this, given);
    if (!window.aborting) return request;
    const { transaction } = this;
    pending.set(transaction, (pending.get(transaction) ?? 0) + 1);
    request.addEventListener("success", () => {
      pending.set(transaction, pending.get(transaction) - 1);
      if (pending.get(transaction) > 0) return;
      window.aborted += 1;
      transaction.abort();
    });
    return request;
  };
}

/** A new tab with the app in it, opened and read. `first`: functions to run before any of its scripts. */
export async function open_app(browser, url, { first = [], allow = [] } = {}) {
  const page = await browser.open(null, { allow });
  for (const each of first) await page.evaluateOnNewDocument(each);
  await page.goto(url);
  await opened(page);
  return page;
}

/** Waits until the records are open and a page stands. */
export const opened = (page) => until(page, () =>
  document.querySelector("#page-title") !== null && document.querySelector(".waiting") === null);

/** A server of the built folder, and the app from it. */
export async function started({ browser, serve }, { options = {}, hash = "", ...more } = {}) {
  const server = await serve(await built_folder(), options);
  const page = await open_app(browser, server.url + hash, more);
  return { server, page };
}

// A new page stands once its heading has the focus: the address alone changes at once, and what is typed
// before that would go nowhere.
const arrived = (page, hash) => until(page, (address) =>
  location.hash === address && document.querySelector("#page-title:not([data-left])") !== null && document.activeElement.id === "page-title", hash);

const leaving = (page) => page.evaluate(() => document.querySelector("#page-title").setAttribute("data-left", ""));

/** Goes to an address within the app and waits until its page stands there. */
export async function go(page, hash) {
  if (await page.evaluate((address) => location.hash === address, hash)) return;
  await leaving(page);
  await page.evaluate((address) => { location.hash = address; }, hash);
  await arrived(page, hash);
}

/** Goes to a page of the wig whose page stands here. */
export async function go_tab(page, tab) {
  const wig = await wig_here(page);
  await go(page, `#/wig/${wig}/${tab}`);
}

export const wig_here = (page) => page.evaluate(() => /^#\/wig\/([0-9a-f]{32})/.exec(location.hash)[1]);

/** The wigs of the list: `{name, demo, href}`, in order. */
export const wigs_of = (page) => page.evaluate(() => Array.from(document.querySelectorAll("ul.wigs > li"), (card) => ({
  name: card.querySelector("h2").innerText.trim(),
  demo: card.querySelector(".tag")?.innerText ?? "",
  href: card.querySelector("h2 a").getAttribute("href"),
})));

/** Presses a link by its exact name and waits for the page it leads to. */
export async function follow(page, name) {
  const link = await by_role(page, "link", name);
  const hash = await link.evaluate((each) => each.getAttribute("href"));
  await leaving(page);
  await page.bringToFront();
  await link.click();
  await arrived(page, hash);
}

/** Types into a field, key by key, without leaving it. */
export async function fill(page, id, text) {
  await page.bringToFront();
  await until(page, (name) => document.getElementById(name)?.checkVisibility(), id);
  await page.evaluate((name) => {
    const field = document.getElementById(name);
    field.focus();
    field.select?.();
  }, id);
  if (text === "") await page.keyboard.press("Backspace");
  else await page.keyboard.type(text);
}

/** Types into a figure's field and presses Enter; waits until it is safe, which is when its draft goes. */
export async function enter(page, id, text) {
  await fill(page, id, text);
  await page.keyboard.press("Enter");
  await safe(page, id);
}

/** Picks a day, as from the browser's calendar (typing it goes by the parts of each language's dates),
 *  and presses Enter. */
export async function enter_day(page, id, day) {
  await until(page, (name) => document.getElementById(name)?.checkVisibility(), id);
  await page.evaluate((name, value) => {
    const field = document.getElementById(name);
    field.focus();
    field.value = value;
    field.dispatchEvent(new Event("input", { bubbles: true }));
    field.dispatchEvent(new KeyboardEvent("keydown", { key: "Enter", bubbles: true }));
  }, id, day);
  await safe(page, id);
}

/** Chooses in a figure's list; waits until it is safe. */
export async function choose(page, id, value) {
  await pick(page, id, value);
  await safe(page, id);
}

/** Chooses in a list of a form, without waiting for anything. */
export async function pick(page, id, value) {
  await until(page, (name) => document.getElementById(name)?.checkVisibility(), id);
  await page.evaluate((name, wanted) => {
    const list = document.getElementById(name);
    if (!Array.from(list.options).some((option) => option.value === wanted)) throw new Error(`${name} has no ${wanted}`);
    list.value = wanted;
    list.dispatchEvent(new Event("input", { bubbles: true }));
    list.dispatchEvent(new Event("change", { bubbles: true }));
  }, id, value);
}

const safe = (page, id) => until(page, (name) => {
  const kept = Object.keys(localStorage).some((key) => key.startsWith("weftbook.draft.") && key.endsWith(`.${name}`));
  return !kept && document.getElementById(name) !== null && !document.getElementById(`${name}-note`)?.querySelector(".reason,.unsaved");
}, id);

/** Types what must be refused and presses Enter; returns the reason. What was typed must stay. */
export async function refused(page, id, text) {
  await fill(page, id, text);
  await page.keyboard.press("Enter");
  const reason = await until(page, (name) => document.querySelector(`#${CSS.escape(name)}-note .reason`)?.innerText, id);
  assert.equal(await value_of(page, id), text, `${id}: what was typed stays`);
  assert.equal(await page.evaluate((name) => document.getElementById(name).getAttribute("aria-invalid"), id), "true");
  return reason;
}

export const value_of = (page, id) => page.evaluate((name) => document.getElementById(name)?.value ?? null, id);
export const note_of = (page, id) => page.evaluate((name) => document.getElementById(`${name}-note`)?.innerText ?? null, id);
export const text_at = (page, id) => page.evaluate((name) => document.getElementById(name)?.innerText ?? null, id);

/** Unfolds the `details` whose summary reads so (inside `within`, a selector). */
export async function unfold(page, summary, within = "main") {
  await until(page, (wanted, inside) => {
    const found = Array.from(document.querySelectorAll(`${inside} details > summary`)).find((each) => each.innerText.trim().startsWith(wanted));
    if (!found) return false;
    if (!found.parentElement.open) found.click();
    return found.parentElement.open;
  }, summary, within);
}

/** Starts a wig with its four answers; ends on its cap page, and returns its id. */
export async function start_wig(page, name, { fibre = "modacrylic", cap = "open_wefted", size = "medium" } = {}) {
  await go(page, "#/start");
  await fill(page, "start-name", name);
  await pick(page, "start-fibre", fibre);
  await pick(page, "start-cap", cap);
  await pick(page, "start-size", size);
  await press(page, "button", "Start");
  await until(page, (wanted) => /^#\/wig\/[0-9a-f]{32}\/cap$/.test(location.hash) &&
    document.querySelector("#page-title")?.innerText.startsWith(wanted), name);
  return wig_here(page);
}

/** Adds a weft on the page "Weft to buy" and fills some of its fields; returns its id. */
export async function add_lot(page, figures) {
  const before = await lots_of(page);
  await press(page, "button", "Add a weft");
  const lot = await until(page, (known) => Array.from(document.querySelectorAll("[id^=lot_name-]"), (each) => each.id.slice(9))
    .find((id) => !known.includes(id) && document.activeElement.id === `lot_name-${id}`), before);
  for (const [slot, text] of Object.entries(figures)) {
    const id = `${slot}-${lot}`;
    const list = await page.evaluate((name) => document.getElementById(name)?.tagName === "SELECT", id);
    await (list ? choose(page, id, text) : enter(page, id, text));
  }
  return lot;
}

const lots_of = (page) => page.evaluate(() => Array.from(document.querySelectorAll("[id^=lot_name-]"), (each) => each.id.slice(9)));

/** Waits until the reckoning stands still, and returns the answer's parts as shown. */
export async function answer(page) {
  return until(page, () => {
    const section = document.querySelector("section.answer");
    if (!section || section.getAttribute("aria-busy") !== "false" || !document.getElementById("headline")) return false;
    const facts = {};
    for (const pair of document.querySelectorAll("#facts > div")) facts[pair.querySelector("dt").innerText.trim()] = pair.querySelector("dd").innerText.trim();
    return {
      headline: document.getElementById("headline").innerText.trim(),
      facts,
      rows: document.querySelectorAll("#rows tbody tr").length,
      proved: document.getElementById("proved")?.innerText ?? "",
    };
  });
}

/** Waits for an answer that satisfies `wanted`. */
export async function answer_where(page, wanted) {
  const give_up = Date.now() + 20_000;
  let last;
  do {
    last = await answer(page);
    if (wanted(last)) return last;
    await new Promise((later) => setTimeout(later, 25));
  } while (Date.now() < give_up);
  throw new Error(`no such answer: ${wanted}; the last was ${JSON.stringify(last)}`);
}

/** The whole log, last first: `{what, undone}`. */
export async function log_of(page) {
  const count = await page.evaluate(() => {
    const all = Array.from(document.querySelectorAll("section[aria-labelledby=record-log] button")).find((each) => each.innerText.startsWith("Show all"));
    all?.click();
    return all ? Number(/\d+/.exec(all.innerText)[0]) : null;
  });
  if (count !== null) await until(page, (wanted) => document.querySelectorAll("ol.log > li").length === wanted, count);
  return page.evaluate(() => Array.from(document.querySelectorAll("ol.log > li"), (entry) => ({
    what: entry.querySelector(".what").innerText,
    undone: entry.classList.contains("undone"),
  })));
}

/** Waits until the offline copy is complete and serves this page. */
export const offline_ready = (page) => until(page, async () =>
  (await navigator.serviceWorker.getRegistration())?.active?.state === "activated" && navigator.serviceWorker.controller !== null);
