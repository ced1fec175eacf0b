// From the colours wanted to a bath, two test locks, a corrected depth, and a recorded dyeing that takes its dye off the shelf.

import assert from "node:assert/strict";
import { in_every_engine } from "./lib/suite.mjs";
import { press, until } from "./lib/page.mjs";
import { choose, enter, fill, go_tab, log_of, started, start_wig, unfold } from "./lib/app.mjs";

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
});
