// The whole way, as a person goes it: from the demo through a wig of their own to a record that is
// still there, offline, after the browser was closed. Then what must hold beside that way.

import assert from "node:assert/strict";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test } from "node:test";
import { ENGINES, launch } from "./lib/browser.mjs";
import { press, until } from "./lib/page.mjs";
import { built_folder, serve } from "./lib/server.mjs";
import {
  add_lot, answer, answer_where, choose, enter, enter_day, fill, follow, go, go_tab, log_of, note_of, offline_ready, open_app, pick,
  refused, spy_on_writes, start_wig, text_at, unfold, value_of, wigs_of,
} from "./lib/app.mjs";

const DEMOS = ["Copper bob", "Storm-grey mane", "Evening dressing, 1890s"];
// With the server gone the browser's own check for a new version cannot reach it, and says so.
const SERVER_GONE = [/ERR_CONNECTION_REFUSED/, /sw\.js/];

for (const engine of ENGINES) {
  test(`the whole way in ${engine}`, { timeout: 120_000 }, async () => {
    const profile = await mkdtemp(join(tmpdir(), "weftbook-way-"));
    // A server that sends no header but the types a browser insists on, under a sub-path.
    const server = await serve(await built_folder(), { prefix: "/some/sub/path/", headers: "none" });
    let browser = await launch(engine, { profile });
    try {
      const page = await open_app(browser, server.url, { first: [spy_on_writes], allow: SERVER_GONE });
      await demo_first(page);
      await start_wig(page, "Bell-ringer", { fibre: "modacrylic" });
      await cap_page(page);
      await base_page(page);
      await look_page(page);
      const lot = await weft_page(page);
      const planned = await answer(page);
      await sew(page, lot);
      await correct_and_undo(page);
      await note(page);
      await units(page);
      const left = await everything(page);
      assert.equal(left.rows, planned.rows, "the row that was undone is planned again");
      const durabilities = await page.evaluate(() => window.durabilities);
      assert.ok(durabilities.length > 20, `${durabilities.length} writes were seen`);
      assert.deepEqual([...new Set(durabilities)], ["strict"]);
      await go(page, "#/safe");
      await offline_ready(page);
      browser.quiet();

      await browser.close();
      await server.stop();
      browser = await launch(engine, { profile });
      const later = await open_app(browser, server.url, { allow: SERVER_GONE });
      assert.deepEqual((await wigs_of(later)).map(({ name, demo }) => [name, demo !== ""]), [...DEMOS.map((name) => [name, true]), ["Bell-ringer", false]]);
      await follow(later, "Bell-ringer");
      assert.deepEqual(await everything(later), left, "everything is there");
      await go_tab(later, "look");
      await enter(later, "target", "1.2");
      await go_tab(later, "weft");
      await answer_where(later, ({ headline }) => /^Buy|^Nothing/.test(headline));
      browser.quiet();
    } finally {
      await browser.close();
      await server.stop();
      await rm(profile, { recursive: true, force: true, maxRetries: 5 });
    }
  });
}

async function demo_first(page) {
  const wigs = await wigs_of(page);
  assert.deepEqual(wigs.map(({ name }) => name), DEMOS);
  for (const { demo } of wigs) assert.match(demo, /Demo, invented/);
}

async function cap_page(page) {
  const views = await page.evaluate(() => Array.from(document.querySelectorAll(".cap-map svg"), (svg) => ({
    named: Boolean(svg.querySelector("title")?.textContent || svg.getAttribute("aria-label")),
    shapes: svg.querySelectorAll("path,polygon,line,polyline").length,
  })));
  assert.ok(views.length >= 4, "front, side, back, top");
  assert.ok(views.slice(0, 4).every(({ named, shapes }) => named && shapes > 3), JSON.stringify(views));
  const zones = await page.evaluate(() => Array.from(document.querySelectorAll(".zone-button span:first-child"), (each) => each.innerText));
  assert.ok(zones.length >= 6, `zones: ${zones}`);

  // The same zone by the list and by the drawing: each unfolds its fields.
  await press(page, "button", /^Nape/);
  await until(page, () => document.getElementById("longest-nape") !== null);
  await press(page, "button", /^Nape/);
  await until(page, () => !document.getElementById("longest-nape"));
  const touched = await page.evaluate(() => {
    // The middle of a zone in a drawing, where a finger would land.
    for (const area of document.querySelectorAll(".cap-map [data-target]")) {
      area.scrollIntoView({ block: "center" });
      const box = area.getBoundingClientRect();
      const place = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
      const hit = document.elementFromPoint(place.x, place.y);
      if (hit?.closest("[data-target]") === area) return place;
    }
    return null;
  });
  assert.ok(touched, "a zone can be touched in the drawing");
  await page.mouse.click(touched.x, touched.y);
  await until(page, () => document.querySelector('.zone-button[aria-expanded="true"]') !== null);
}

async function base_page(page) {
  await follow(page, "Base and head");
  assert.match(await note_of(page, "girth"), /follows from “Size”/, "an assumption says so, and its ground");
  assert.equal(await value_of(page, "girth"), "", "and is not typed into the field as if measured");
  assert.match(await refused(page, "girth", "wide"), /“wide” is not a number.*Type/);
  assert.match(await refused(page, "girth", "560"), /560.*too high: at most/);
  assert.equal(await value_of(page, "girth"), "560", "nothing is lost");
  // A small head leaves no room for a large measure that another head might have.
  await enter(page, "girth", "46");
  assert.match(await refused(page, "ear_to_ear_front", "42"), /42 cm does not fit this head: [\d.]+ cm to [\d.]+ cm would/);
  await enter(page, "girth", "57");
  assert.match(await refused(page, "ear_to_ear_front", "59"), /./, "no longer from ear to ear than all round");
  assert.match(await refused(page, "ear_to_ear_top", "70"), /./);
  await enter(page, "ear_to_ear_front", "28,5");
  await choose(page, "tape_from", "tragus");
  await enter(page, "ear_to_ear_top", "36");

  await unfold(page, "Back");
  await enter(page, "longest-back", "12 in");
  assert.equal(await value_of(page, "longest-back"), "12 in", "what was typed stays as typed");
  assert.match(await refused(page, "shortest-back", "40 cm"), /40 cm.*(long|short)/);
  await enter(page, "shortest-back", "8 in");

  // An assumption is taken back as easily as it is replaced.
  await enter(page, "cap_weight", "40");
  assert.doesNotMatch(await note_of(page, "cap_weight"), /assumed/);
  await page.evaluate(() => Array.from(document.querySelectorAll("#cap_weight-note button"), (each) => each.click()));
  await until(page, () => /assumed/.test(document.getElementById("cap_weight-note").innerText));
}

async function look_page(page) {
  await follow(page, "Look");
  await enter(page, "target", "1,3");
  assert.match(await text_at(page, "converted"), /1\.3\d? times as full as bought = .*cm².*%/s);
  await choose(page, "hairline", "glued_strip");
  await choose(page, "parting", "weft_sides");
  await choose(page, "parting_place", "left");
}

async function weft_page(page) {
  await follow(page, "Weft to buy");
  assert.match((await answer(page)).headline, /Add a weft below/);
  const lot = await add_lot(page, { lot_name: "Chestnut weft", pack_weight: "100", pack_width: "150", weft_length: "12 in", pack_price: "18,99" });
  const { headline, facts, rows, proved } = await answer_where(page, (now) => /^Buy \d/.test(now.headline) && now.facts.Costs !== undefined);
  assert.match(headline, /^Buy \d+/);
  const [low, high, likely] = facts.Packs.match(/\d+/g).map(Number);
  assert.ok(low <= likely && likely <= high && likely > 0, facts.Packs);
  assert.equal(Number(facts.Costs.replace(/[^\d.]/g, "")), Math.round(likely * 1899) / 100, facts.Costs);
  assert.ok(rows > 0);
  assert.match(proved, /Cannot be done cheaper/);
  assert.ok(await page.evaluate(() => document.querySelectorAll(".laid svg").length === 1));

  await unfold(page, "How this was reckoned");
  const working = await page.evaluate(() => Array.from(document.querySelectorAll("details.working dd"), (each) => each.innerText));
  assert.ok(working.length > 5 && working.some((line) => /57/.test(line) || /as you said/.test(line)), "the working has this person's numbers");

  await enter_day(page, "due", "2031-06-30");
  assert.match((await answer_where(page, (now) => /2031/.test(now.facts["Order by"]))).facts["Order by"], /^2031-0[56]-\d\d$/);
  return lot;
}

const places = (page) => page.evaluate(() => Array.from(document.querySelectorAll("#rows tbody tr"), (row) => row.children[1].innerText));
const metres = ({ facts }) => Number.parseFloat(facts["Weft in all"]);

const shelf = (page) => page.evaluate(() => document.querySelector(".lot .hint").innerText);
const used = async (page) => Number.parseFloat(/([\d.]+) m used since/.exec(await shelf(page))[1]);

/** "Sewn" beside the first row: it is no longer planned, and its weft comes off the lot. */
async function sew(page, lot) {
  const wig = await page.evaluate(() => location.hash.slice(0, -"weft".length));
  await go(page, "#/lots");
  await unfold(page, "Count what is left");
  await fill(page, "count-whole_packs", "2");
  await press(page, "button", "Record");
  await until(page, () => /2 whole of.* 0 m used since/.test(document.querySelector(".lot .hint").innerText));

  await go(page, `${wig}weft`);
  const before = await answer_where(page, (now) => now.rows > 0);
  const [first] = await places(page);
  await press(page, "button", "Sewn: row 1");
  const after = await answer_where(page, (now) => metres(now) < metres(before));
  assert.ok(metres(after) > 0);
  assert.ok(!(await places(page)).includes(first), `${first} is no longer planned`);
  await go(page, "#/lots");
  const once = await used(page);
  assert.ok(once > 0, "what was sewn comes off the lot");

  await go(page, `${wig}record`);
  const { what } = (await log_of(page))[0];
  for (const part of [/Weft sewn: a row/, /Length of weft: [\d.]+ cm/, /Weft: Chestnut weft/]) assert.match(what, part);
  await pick(page, "work-kind", "sew_weft");
  await pick(page, "sew_weft-sewn_as", "row");
  await pick(page, "sew_weft-zone", "back");
  await pick(page, "sew_weft-lot", lot);
  await fill(page, "sew_weft-length", "5 m");
  await press(page, "button", "Record");
  const reason = await until(page, () => document.querySelector("#sew_weft-length-note .reason")?.innerText);
  assert.match(reason, /longer than any row of “Back” \(at most [\d.]+ cm\)/, "a row longer than its zone is refused with the zone's own length");
  assert.equal(await value_of(page, "sew_weft-length"), "5 m");
  await fill(page, "sew_weft-length", "21 cm");
  await unfold(page, "More", "section[aria-labelledby=bench-record]");
  await fill(page, "sew_weft-minutes", "12");
  await press(page, "button", "Record");
  await until(page, () => /Length of weft: 21 cm/.test(document.querySelector("ol.log .what").innerText));
  await go(page, "#/lots");
  assert.ok(Math.abs((await used(page)) - once - 0.21) < 0.011, await shelf(page));
  await go(page, `${wig}record`);
}

async function correct_and_undo(page) {
  await page.evaluate(() => Array.from(document.querySelectorAll("ol.log > li:first-child button")).find((each) => each.innerText === "Put right").click());
  const id = await until(page, () => document.querySelector("ol.log > li:first-child input[id^=sew_weft-length-]")?.id);
  assert.equal(await value_of(page, id), "21 cm");
  await fill(page, id, "19 cm");
  await page.keyboard.press("Enter");
  await until(page, () => /Length of weft: 19 cm/.test(document.querySelector("ol.log .what").innerText));
  assert.match(await page.evaluate(() => document.querySelector("ol.log > li:first-child").innerText), /was: .*21 cm/);
  for (const undone of [1, 2]) {
    await page.evaluate(() => Array.from(document.querySelectorAll("ol.log > li:not(.undone) button")).find((each) => each.innerText === "Undo").click());
    await press(page, "button", "Yes");
    // The focus comes to rest on the entry; what is typed before that would go there.
    await until(page, (count) => document.querySelectorAll("ol.log > li.undone").length === count &&
      document.activeElement.matches("li.undone"), undone);
  }
  assert.deepEqual((await log_of(page)).slice(0, 3).map((entry) => entry.undone), [true, true, false], "an entry undone stays, marked");
}

async function note(page) {
  await fill(page, "note-words", "The ends are tapered; try the seam first.");
  await page.evaluate(() => document.getElementById("note-words").form.requestSubmit());
  await until(page, () => /try the seam first/.test(document.querySelector("ol.log .what").innerText));
}

/** To inches and back; what was typed stays as typed, what is reckoned changes. */
async function units(page) {
  const wig = await page.evaluate(() => location.hash.replace("/record", "/base"));
  const assumed = () => page.evaluate(() => document.getElementById("nape_width").placeholder);
  await go(page, wig);
  const metric = await assumed();
  assert.match(metric, /cm$/);
  for (const [place, pattern] of [[1, /in$/], [0, /cm$/]]) {
    await go(page, "#/units");
    await page.evaluate((index) => document.getElementById(`lengths-${index}`).click(), place);
    await go(page, wig);
    await until(page, (source) => new RegExp(source).test(document.getElementById("nape_width").placeholder), pattern.source);
    assert.equal(await value_of(page, "longest-back"), "12 in");
    assert.equal(await value_of(page, "ear_to_ear_front"), "28,5 cm");
  }
  assert.equal(await assumed(), metric);
}

/** What the wig's pages show, to be compared with what they show later. */
async function everything(page) {
  await go_tab(page, "base");
  const fields = await page.evaluate(() => Object.fromEntries(Array.from(document.querySelectorAll("main input,main select"), (each) => [each.id, each.value])));
  await go_tab(page, "record");
  const log = await log_of(page);
  await go_tab(page, "weft");
  return { fields, log, ...(await answer_where(page, (now) => now.rows > 0)) };
}
