// The bench: a wig from bought to worn with one mistake caught in time, the plan of work, what speaks before a
// step, looking back, finding again, photos.

import assert from "node:assert/strict";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before } from "node:test";
import { choose_file, press, until } from "./lib/page.mjs";
import { in_every_engine } from "./lib/suite.mjs";
import { fill, follow, go, go_tab, log_of, open_app, pick, start_wig, started, text_at, unfold, value_of, wig_here } from "./lib/app.mjs";

let directory;
before(async () => { directory = await mkdtemp(join(tmpdir(), "weftbook-bench-")); });
after(() => rm(directory, { recursive: true }));

/** Records work of a kind; `fields` by name, zones as a list. */
async function record(page, kind, fields, button = "Record") {
  await ready(page, kind, fields);
  const before = await last_entry(page);
  await page.evaluate((wanted) => {
    const form = document.querySelector("section[aria-labelledby=bench-record] form.work");
    const button = form.querySelector("button[type=submit]");
    if (button.innerText.trim() !== wanted) throw new Error(`the button reads ${button.innerText}`);
    button.click();
  }, button);
  await until(page, (last) => document.querySelector("ol.log > li")?.id !== last, before);
}

const last_entry = (page) => page.evaluate(() => document.querySelector("ol.log > li")?.id);

/** Fills the form of a kind without recording it. */
async function ready(page, kind, fields) {
  await pick(page, "work-kind", kind);
  for (const [name, value] of Object.entries(fields)) {
    const id = `${kind}-${name}`;
    if (Array.isArray(value)) await zones(page, id, value);
    else if (await page.evaluate((each) => document.getElementById(each)?.tagName === "SELECT", id)) await pick(page, id, value);
    else await fill(page, id, value);
  }
}

async function zones(page, id, labels) {
  await page.evaluate((box, wanted) => {
    for (const tick of document.getElementById(box).querySelectorAll("label")) {
      if (wanted.includes(tick.innerText.trim())) tick.querySelector("input").click();
    }
  }, id, labels);
}

const found = (page) => page.evaluate(() => Array.from(
  document.querySelectorAll("section[aria-labelledby=bench-record] .found .caution"), (each) => each.innerText.trim()));

const text_of = (page, section) => page.evaluate((name) => document.querySelector(`section[aria-labelledby=${name}]`).innerText, section);

/** From the list of wigs to the bench of one, by its card. */
async function page_of(page, wig) {
  await page.evaluate((id) => document.querySelector(`ul.wigs a[href="#/wig/${id}/record"]`).click(), wig);
  await until(page, () => document.querySelector("#bench-next") !== null);
}

const condition = (page) => page.evaluate(() => Object.fromEntries(Array.from(
  document.querySelectorAll("section[aria-labelledby=bench-condition] tbody tr"),
  (row) => [row.querySelector("th").innerText.trim(), Array.from(row.querySelectorAll("td"), (cell) => cell.innerText.trim())])));

in_every_engine("bench", ({ engine, check }) => {
  check("a wig from bought to worn, with one mistake caught: braided before the bath", async (given) => {
    const { page, server } = await started(given);
    const wig = await start_wig(page, "Bell-founder");
    await go_tab(page, "record");
    await record(page, "base", { texture: "straight" });
    await record(page, "block", { block: "canvas" });
    await record(page, "wash", { washed_with: "mild_shampoo", temperature: "30" });
    await record(page, "gather", { gathered: "braided", zones: ["Crown", "Back"] });
    assert.equal((await condition(page)).Back[0], "braids");

    // The bath is asked for while two zones are braided: it is told before it is recorded, not after.
    await ready(page, "dye", { dye_class: "disperse", dye_way: "bath", temperature: "82" });
    const told = await until(page, () => Array.from(document.querySelectorAll("section[aria-labelledby=bench-record] .found .caution"), (each) => each.innerText.trim())
      .filter((each) => /undyed/.test(each)));
    assert.equal(told.length, 1, `told once: ${told}`);
    assert.match(told[0], /(Crown|Back)/, "with the zones");
    assert.match(await page.evaluate(() => document.querySelector("section[aria-labelledby=bench-record] .hazard").innerText), /dye|Dye/, "one hazard box");
    assert.equal(await page.evaluate(() => document.querySelectorAll("section[aria-labelledby=bench-record] .hazard").length), 1);
    const before = (await log_of(page)).length;

    // So the braids are let go first; then nothing speaks of them any more, and what was typed is still there.
    await record(page, "release", {});
    assert.equal((await log_of(page)).length, before + 1);
    await pick(page, "work-kind", "dye");
    await until(page, () => document.getElementById("dye-temperature")?.value === "82");
    assert.deepEqual((await found(page)).filter((each) => /undyed/.test(each)), []);
    await record(page, "dye", {});
    await record(page, "rinse", { ran_clear: "yes" });
    await record(page, "dry", { dry_way: "air", left: "dry_through", hours: "12" });
    await record(page, "cut", { cut_way: "layers", hair_length: "28" });
    await record(page, "fitting", { fit: "fits" });
    await record(page, "worn", { occasion: "Ringing-in" });
    const log = await log_of(page);
    assert.deepEqual(log.slice(0, 3).map(({ what }) => what.split(":")[0]), ["Worn", "Fitting", "Cut and layered"]);

    // Back through the work: as it was when the braids were in.
    const now = (await condition(page)).Back;
    assert.equal(now[0], "loose");
    assert.match(now[3], /disperse/i);
    const braided = await page.evaluate(() => Array.from(document.getElementById("as-it-was").options).findIndex((each) => /Bound/.test(each.innerText)));
    await pick(page, "as-it-was", String(braided));
    await until(page, () => /braids/.test(document.querySelector("section[aria-labelledby=bench-condition] table").innerText));
    const then = (await condition(page)).Back;
    assert.equal(then[0], "braids");
    assert.equal(then[3], "", "not dyed yet");
    await press(page, "button", "As it is now");

    // Found again over all wigs, and next year too; a limit counts itself.
    await go(page, "#/find");
    await pick(page, "find-kind", "dye");
    await fill(page, "find-low", "82");
    await fill(page, "find-high", "82");
    const lines = await until(page, () => {
      const all = Array.from(document.querySelectorAll("ol.log > li"), (each) => each.innerText);
      return all.some((each) => /Bell-founder/.test(each)) && all;
    });
    assert.ok(lines.every((each) => /Dyed or coloured/.test(each)), lines.join("\n"));
    const demo_weft = await page.evaluate(() => Array.from(document.getElementById("find-lot").options).find((each) => each.innerText === "Copper weft, rest of spring").value);
    for (const id of ["find-kind", "find-low", "find-high"]) await (id === "find-kind" ? pick : fill)(page, id, "");
    await pick(page, "find-lot", demo_weft);
    await until(page, () => /Copper bob/.test(document.querySelector("ol.log").innerText) && !/Bell-founder/.test(document.querySelector("ol.log").innerText));
    assert.ok((await log_of(page)).every(({ what }) => /Copper weft, rest of spring/.test(what)), "by weft");
    await page.close();
    const later = await open_app(given.browser, `${server.url}#/wig/${wig}/record`);
    assert.equal((await log_of(later)).length, log.length, "everything is still there");
  });

  check("a judgement against a check is one tap, recorded, and shown", async (given) => {
    const { page } = await started(given);
    await start_wig(page, "Lamplighter");
    await go_tab(page, "record");
    await ready(page, "heat_set", { medium: "water", temperature: "100" });
    await until(page, () => document.querySelector("section[aria-labelledby=bench-record] .found .caution.stop") !== null);
    await fill(page, "heat_set-judgement", "a scrap wig, to see what happens");
    await record(page, "heat_set", {}, "My judgement: record it all the same");
    assert.match(await page.evaluate(() => document.querySelector("ol.log > li").innerText), /My judgement went against: .*a scrap wig/s);
  });

  check("a plan of work is built, done, left out, put in another order; a timer outlives its tab", async (given) => {
    const { page, server } = await started(given);
    const wig = await start_wig(page, "Ropewalker");
    await go_tab(page, "record");
    await record(page, "base", { texture: "wavy" });
    await press(page, "button", "Which steps does this wig need?");
    await press(page, "button", "Put them into the plan");
    const steps = await until(page, () => {
      const all = Array.from(document.querySelectorAll("ol.steps > li .what strong"), (each) => each.innerText);
      return all.length > 3 && all;
    });
    assert.ok(steps.includes("Straighten"), steps.join(", "));
    const next = () => text_at(page, "bench-next").then(() => page.evaluate(() => document.querySelector(".next-step .what").innerText));
    assert.equal(await next(), steps[0]);

    await press(page, "button", "Start the timer");
    await page.evaluate(() => {
      // A quarter of an hour at the bench, without waiting for it.
      const key = Object.keys(localStorage).find((each) => each.startsWith("weftbook.draft.timer."));
      const [before, since] = localStorage.getItem(key).split("+");
      localStorage.setItem(key, `${before}+${Number(since) - 15 * 60_000}`);
    });
    await page.close();
    const later = await open_app(given.browser, `${server.url}#/wig/${wig}/record`);
    await until(later, () => /15 min/.test(document.querySelector("[role=timer]")?.innerText ?? ""));
    await press(later, "button", "Done");
    await until(later, (first) => document.querySelector(".next-step .what").innerText !== first, steps[0]);
    await until(later, () => /Time it took: 15 min/.test(document.querySelector("ol.log > li .what").innerText));
    assert.match(await later.evaluate(() => document.querySelector("section[aria-labelledby=bench-plan] summary").innerText), /1 done/);

    await press(later, "button", "Leave out…");
    await fill(later, "skip-why", "not this time");
    await later.keyboard.press("Enter");
    await until(later, () => /2 done or left out/.test(document.querySelector("section[aria-labelledby=bench-plan] summary").innerText));

    const open = () => later.evaluate(() => Array.from(document.querySelectorAll("section[aria-labelledby=bench-plan] > ol.steps > li .what strong"), (each) => each.innerText));
    const [first, second, ...rest] = await open();
    await later.evaluate(() => document.querySelector("section[aria-labelledby=bench-plan] > ol.steps > li button:not(:disabled):nth-of-type(2)").click());
    await until(later, (wanted) => document.querySelector("section[aria-labelledby=bench-plan] > ol.steps > li .what strong").innerText === wanted || wanted === null, second === first ? null : second);
    assert.deepEqual((await open()).sort(), [first, second, ...rest].sort());
  });

  check("what is written together is taken back together, and put back; sittings are counted one by one", async (given) => {
    const { page } = await started(given);
    await start_wig(page, "Fletcher");
    await go_tab(page, "record");
    assert.equal(await page.evaluate(() => document.querySelector("section[aria-labelledby=bench-record] form")), null, "no kind of work is chosen");
    await press(page, "button", "Which steps does this wig need?");
    await press(page, "button", "Put them into the plan");
    const steps = await until(page, () => document.querySelectorAll("ol.steps > li").length);
    assert.ok(steps > 3);
    assert.doesNotMatch(await text_of(page, "record-log"), /:\s*$|(Put away): \1/m, "nothing ends in a colon or says itself twice");
    const undo = async () => {
      await press(page, "button", "Undo what was written last");
      await until(page, (count) => document.querySelector(".confirm").innerText.includes(`Undo ${count} changes of the plan`), steps);
      await press(page, "button", "Yes");
    };
    await undo();
    await until(page, () => document.querySelectorAll("ol.steps > li").length === 0);
    assert.equal((await log_of(page)).filter(({ undone }) => undone).length, steps);
    await press(page, "button", "Put it back");
    await until(page, () => document.querySelectorAll("ol.steps > li").length === 1);
    assert.equal((await log_of(page)).filter(({ undone }) => undone).length, steps - 1);

    // A sitting of less than half a minute says no time; one that was counted does not stay for the next.
    await press(page, "button", "Start the timer");
    await press(page, "button", "Done, but…");
    await until(page, () => document.querySelector(".next-step form") !== null);
    await press(page, "button", "Stop for now, more to come");
    await until(page, () => /Begun: 1/.test(document.querySelector(".next-step").innerText));
    await until(page, () => document.querySelector(".next-step form") === null);
    assert.match(await page.evaluate(() => document.querySelector(".timer").innerText), /^Start the timer$/);
    assert.doesNotMatch((await log_of(page))[0].what, /Time it took/);
  });

  check("a photo is one tap from the step; a sheet of zones on a phone; only the last entries at first", async (given) => {
    const { page, server } = await started(given);
    const wig = await start_wig(page, "Cordwainer", { fibre: "polyester" });
    await go_tab(page, "record");
    await press(page, "button", "Which steps does this wig need?");
    await press(page, "button", "Put them into the plan");
    const step = await until(page, () => document.querySelector(".next-step .what")?.innerText);
    const path = join(directory, `${engine}-step.png`);
    const data = await page.evaluate(() => Object.assign(document.createElement("canvas"), { width: 400, height: 300 }).toDataURL("image/png").split(",")[1]);
    await writeFile(path, Buffer.from(data, "base64"));
    await choose_file(page, () => press(page, "button", "Photo"), path);
    await until(page, () => document.querySelector("ol.log > li .photo img")?.naturalWidth === 320);
    assert.ok((await log_of(page))[0].what.includes(step.trim()), "of the step that stands there");
    assert.equal(await page.evaluate(() => document.querySelector(".next-step .what").innerText), step, "a photo is not the step");

    await record(page, "product", { product: "hairspray", flammable: "yes", zones: ["Back"] });
    assert.match((await condition(page)).Back[1], /flammable, not yet dried off/);
    for (const [length, zone] of [["21 cm", "back"], ["19 cm", "back"]]) {
      await record(page, "sew_weft", { sewn_as: "row", length, zone });
    }
    assert.match((await condition(page)).Back[5], /^2 pieces, 40 cm/);
    await page.setViewport({ width: 360, height: 800 });
    assert.equal(await page.evaluate(() => {
      const table = document.querySelector(".condition table");
      return getComputedStyle(table.querySelector("td")).display === "block" && table.getBoundingClientRect().right <= innerWidth
        && Array.from(table.querySelector("td").attributes).some((each) => each.value.includes("Bound"));
    }), true, "a card for each zone, its cells named");
    await page.setViewport({ width: 768, height: 900 });
    assert.equal(await page.evaluate(() => {
      const box = document.querySelector(".condition");
      return box.scrollWidth <= box.clientWidth;
    }), true, "no column is off the screen");
    await page.close();

    const later = await open_app(given.browser, `${server.url}#/`);
    await page_of(later, wig);
    await until(later, () => document.querySelectorAll("ol.log > li").length === 10);
    assert.ok((await log_of(later)).length > 10);
  });

  check("a photo is made small, kept by its hash, shown, and missing elsewhere is said", async (given) => {
    const { page } = await started(given);
    await start_wig(page, "Gilder");
    await go_tab(page, "record");
    await pick(page, "work-kind", "photo");
    // A picture larger than any photo is kept.
    const bytes = await page.evaluate(async () => {
      const canvas = document.createElement("canvas");
      [canvas.width, canvas.height] = [2400, 1200];
      const context = canvas.getContext("2d");
      context.fillStyle = "#a52";
      context.fillRect(0, 0, 2400, 1200);
      const blob = await new Promise((resolve) => canvas.toBlob(resolve, "image/png"));
      return Array.from(new Uint8Array(await blob.arrayBuffer()));
    });
    const path = join(directory, `${engine}.png`);
    await writeFile(path, Uint8Array.from(bytes));
    await choose_file(page, () => press(page, "button", "Take or choose a photo"), path);
    await until(page, () => document.querySelector(".photo-field img")?.naturalWidth === 320);
    await pick(page, "photo-shows", "before");
    await page.evaluate(() => document.querySelector("section[aria-labelledby=bench-record] form.work button[type=submit]").click());
    await until(page, () => document.querySelector("ol.log .photo img")?.naturalWidth === 320);
    await press(page, "button", "Larger");
    await until(page, () => Array.from(document.querySelectorAll(".photo img")).some((each) => each.naturalWidth === 1600));
    assert.match(await page.evaluate(() => document.querySelector(".before-after").innerText), /before/);
  });

  check("another like this takes the plan and the look along, not what was done", async (given) => {
    const { page } = await started(given);
    await start_wig(page, "Twin");
    await go_tab(page, "look");
    await pick(page, "worn", "bunches");
    await until(page, () => document.getElementById("saving").innerText.startsWith("Saved"));
    await go_tab(page, "record");
    await record(page, "block", { block: "cork" });
    const old = await wig_here(page);
    await press(page, "button", "Start another like this");
    await until(page, (before) => /\/base$/.test(location.hash) && !location.hash.includes(before), old);
    await go_tab(page, "look");
    assert.equal(await value_of(page, "worn"), "bunches");
    await go_tab(page, "record");
    assert.ok((await log_of(page)).every(({ what }) => !/Blocked/.test(what)));
  });

  check("the fibre drawer shows windows with their sources, takes a test lock, and says what it means", async (given) => {
    const { page } = await started(given);
    await follow(page, "Fibres");
    await follow(page, "Modacrylic");
    const text = await page.evaluate(() => document.querySelector("main").innerText);
    for (const part of [/never above/, /common practice|read in the source/, /Sources disagree/]) assert.match(text, part);
    await unfold(page, "Write down a test lock");
    await fill(page, "test_lock-temperature", "84");
    await pick(page, "test_lock-lock_result", "held");
    await pick(page, "test_lock-medium", "water");
    await press(page, "button", "Record");
    await until(page, () => /held at 84 °C; 1 lock$/m.test(document.querySelector("section[aria-labelledby=drawer-own]").innerText));
  });
});
