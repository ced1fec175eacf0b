// From the colours wanted to a bath, two test locks, a corrected depth, and a recorded dyeing that takes its dye off the shelf.

import assert from "node:assert/strict";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { deflateSync } from "node:zlib";
import { in_every_engine } from "./lib/suite.mjs";
import { choose_file, press, until } from "./lib/page.mjs";
import { choose, enter, fill, go_tab, log_of, started, start_wig, unfold, value_of } from "./lib/app.mjs";

const headline = (page) => page.evaluate(() => document.getElementById("headline")?.innerText ?? "");
const dose = (page) => page.evaluate(() => document.querySelector(".bath dl.facts dd")?.innerText ?? "");
const grams = (text) => Number(/^([\d.]+) g/.exec(text)?.[1]);
const cautions = (page) => page.evaluate(() => Array.from(document.querySelectorAll(".answer .caution"), (each) => each.innerText).join("\n"));
const shelf = (page) => page.evaluate(() => document.querySelector("#colour-dyes")?.parentElement.querySelector("article.lot p.hint")?.innerText ?? "");

async function lock(page, dye, depth, shade) {
  await press(page, "button", /^Record a test lock of rose/);
  await until(page, () => document.getElementById("colour_lock-depth") !== null);
  await fill(page, "colour_lock-depth", depth);
  await fill(page, "colour_lock-result_shade", shade);
  await press(page, "button", "Record");
  await until(page, () => document.getElementById("colour_lock-depth") === null);
}

/** A PNG of two halves, left and right, each of one colour. */
function halves(left, right) {
  const wide = 40;
  const line = [0, ...Array.from({ length: wide }, (_, x) => (x < wide / 2 ? left : right)).flat()];
  const chunk = (name, body) => {
    const data = Buffer.concat([Buffer.from(name), body]);
    let crc = ~0;
    for (const byte of data) for (let bit = 0, value = byte; bit < 8; bit += 1, value >>= 1) crc = ((crc ^ value) & 1 ? 0xedb88320 : 0) ^ (crc >>> 1);
    const out = Buffer.alloc(data.length + 8);
    out.writeUInt32BE(body.length, 0);
    data.copy(out, 4);
    out.writeUInt32BE(~crc >>> 0, data.length + 4);
    return out;
  };
  const head = Buffer.from([0, 0, 0, wide, 0, 0, 0, wide, 8, 2, 0, 0, 0]);
  const rows = deflateSync(Buffer.from(Array.from({ length: wide }, () => line).flat()));
  return Buffer.concat([Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]), chunk("IHDR", head), chunk("IDAT", rows), chunk("IEND", Buffer.alloc(0))]);
}

async function touch(page, share) {
  const place = await page.evaluate((part) => {
    const canvas = document.querySelector(".from-photo canvas");
    canvas.scrollIntoView({ block: "center" });
    const box = canvas.getBoundingClientRect();
    return { x: box.x + box.width * part, y: box.y + box.height / 2 };
  }, share);
  await page.mouse.click(place.x, place.y);
}

in_every_engine("colour", ({ check }) => {
  check("from look to bath to test lock to corrected depth to a recorded bath", async (given) => {
    const { page } = await started(given);
    await start_wig(page, "Rose ends", { fibre: "modacrylic" });
    await go_tab(page, "colour");
    assert.match(await headline(page), /No colours are wanted/);
    await press(page, "button", "Draw colours");
    await until(page, () => document.getElementById("band-wig-2") !== null);
    await until(page, () => /which colour it starts from/.test(document.getElementById("headline").innerText));
    await enter(page, "base_shade", "#f0e6d2");
    await until(page, () => /^Weigh out/.test(document.getElementById("headline").innerText));
    assert.match(await cautions(page), /nobody tried yet/);

    // A place that does not rise is told, and nothing is lost.
    await fill(page, "band-wig-1-ends", "140");
    await page.keyboard.press("Enter");
    await until(page, () => /must end further out/.test(document.querySelector(".bands .reason")?.innerText ?? ""));
    await enter(page, "pot", "1 L");
    await until(page, () => /too small/.test(document.querySelector(".answer .caution.stop")?.innerText ?? ""));
    assert.match(await cautions(page), /Take a pot of [\d.]+ L or more/);
    await enter(page, "pot", "10 L");
    await until(page, () => document.querySelector(".answer .caution.stop") === null);

    await press(page, "button", "Add a dye");
    const dye = await until(page, () => /^stock_name-(.+)/.exec(document.activeElement.id)?.[1]);
    await enter(page, `stock_name-${dye}`, "rose");
    await choose(page, `stock_class-${dye}`, "disperse");
    await enter(page, `stock_packet-${dye}`, "20 g");
    await enter(page, `stock_shade-${dye}`, "#c04a7a");
    await until(page, () => /20 g left of a full packet/.test(document.querySelector("article.lot p.hint")?.innerText ?? ""));
    const untried = grams(await dose(page));
    assert.ok(untried > 0, await dose(page));

    // Two locks of a dye far weaker than the trade's usual: the wanted colour takes about 2 % of it.
    await lock(page, dye, "0.5 %", "#dfaab0");
    await until(page, () => /one lock/.test(document.querySelector("#colour-locks").parentElement.innerText));
    await lock(page, dye, "1 %", "#d385a0");
    await until(page, () => /2 locks/.test(document.querySelector("#colour-locks").parentElement.innerText));
    const table = await page.evaluate(() => document.querySelector("#colour-locks").parentElement.querySelector("table").innerText);
    assert.match(table, /too light/, table);
    const tried = grams(await dose(page));
    assert.ok(tried > untried * 1.5, `${untried} g, then ${tried} g`);
    assert.doesNotMatch(await cautions(page), /nobody tried yet/);

    await press(page, "button", "Done");
    await until(page, () => /off the shelf/.test(document.querySelector(".bath [role=status]")?.innerText ?? ""));
    const left = Number(/([\d.]+) g left/.exec(await shelf(page))?.[1]);
    assert.ok(Math.abs(left - (20 - tried)) < 0.06, `${left} g left of 20 g after ${tried} g`);

    await press(page, "button", "Put it into the plan of work");
    await until(page, () => /last in the plan/.test(document.querySelector(".bath [role=status]")?.innerText ?? ""));
    await unfold(page, "Where the water stands");
    await unfold(page, "Heat over time");
    assert.ok(await page.evaluate(() => document.querySelectorAll(".bath .drawing svg").length) >= 2);
    await press(page, "button", "Label to print");
    await until(page, () => /Label of rose/.test(document.querySelector("#dye-label svg title")?.textContent ?? ""));

    await go_tab(page, "record");
    const log = await until(page, () => document.querySelectorAll("ol.log > li").length > 0) && await log_of(page);
    assert.ok(log.some(({ what }) => /Dyed or coloured/.test(what) && /#c04a7a/.test(what)), JSON.stringify(log.slice(0, 3)));
  });

  check("what cannot be dyed says why and what else can be done", async (given) => {
    const { page } = await started(given);
    await start_wig(page, "Black", { fibre: "modacrylic" });
    await go_tab(page, "colour");
    await unfold(page, "As text");
    await enter(page, "colour_along", "#f3c6dc");
    await enter(page, "base_shade", "#14110f");
    await until(page, () => /cannot be dyed on a base/.test(document.querySelector(".answer .caution.stop")?.innerText ?? ""));
    assert.match(await cautions(page), /nearest this base can become is #[0-9a-f]{6}/);
    await choose(page, "dye_with", "acid");
    await until(page, () => /acid dye: refuses it/.test(document.getElementById("headline").innerText));
  });

  check("a lock's colour comes off a photo, judged against the paper beside it", async (given) => {
    const folder = await mkdtemp(join(tmpdir(), "weftbook-colour-"));
    try {
      const photo = join(folder, "lock.png");
      // Paper under a yellow lamp, and a grey lock that looks yellow under it.
      await writeFile(photo, halves([230, 218, 180], [138, 131, 107]));
      const { page } = await started(given);
      await start_wig(page, "Grey", { fibre: "modacrylic" });
      await go_tab(page, "colour");
      await press(page, "button", "Add a dye");
      await until(page, () => /^stock_name-/.test(document.activeElement.id));
      await press(page, "button", /^Record a test lock of/);
      await until(page, () => document.getElementById("colour_lock-result_shade") !== null);
      await unfold(page, "From a photo");
      await choose_file(page, () => press(page, "button", "Choose or take a photo"), photo);
      await until(page, () => document.querySelector(".from-photo canvas") !== null);
      await until(page, () => /Touch the white paper/.test(document.querySelector(".from-photo [role=status]")?.innerText ?? ""));
      await touch(page, 0.25);
      await until(page, () => /Now touch the lock/.test(document.querySelector(".from-photo [role=status]")?.innerText ?? ""));
      await touch(page, 0.75);
      await until(page, () => /^#/.test(document.getElementById("colour_lock-result_shade")?.value ?? ""));
      const shade = await value_of(page, "colour_lock-result_shade");
      const bands = /^#(..)(..)(..)$/.exec(shade).slice(1).map((band) => parseInt(band, 16));
      assert.ok(Math.max(...bands) - Math.min(...bands) <= 6, `${shade} is grey`);
      assert.equal(await value_of(page, "colour_lock-seen_by"), "photo_white");
    } finally {
      await rm(folder, { recursive: true });
    }
  });
});
