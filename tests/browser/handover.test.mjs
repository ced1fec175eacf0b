// Handing over and taking back: two people with a browser each, there by link and back by file, with a conflict;
// paper; a damaged link; what others wrote runs nothing.

import assert from "node:assert/strict";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before } from "node:test";
import { launch } from "./lib/browser.mjs";
import { choose_file, press, text_of, until } from "./lib/page.mjs";
import { in_every_engine } from "./lib/suite.mjs";
import { fill, go, go_tab, log_of, open_app, start_wig, started, wig_here, wigs_of } from "./lib/app.mjs";

const HOSTILE = '<img src=x onerror="document.title=1"><script>document.title=2</script>';

let directory;
before(async () => { directory = await mkdtemp(join(tmpdir(), "weftbook-handover-")); });
after(() => rm(directory, { recursive: true }));

const made_link = (page) => until(page, () => document.getElementById("made-link")?.value);

/** A wig with a plan, its sheet open. */
async function planned(given, name) {
  const { page, server } = await started(given);
  await start_wig(page, name);
  await go_tab(page, "record");
  await press(page, "button", "Which steps does this wig need?");
  await press(page, "button", "Put them into the plan");
  await until(page, () => document.querySelectorAll("section[aria-labelledby=bench-plan] ol.steps > li").length > 3);
  return { page, server, wig: await wig_here(page) };
}

const sheet_ready = (page) => until(page, () => document.querySelector(".sheet") !== null &&
  document.querySelector(".sheet-preview").getAttribute("aria-busy") === "false");

/** The link over the sheet. */
async function handed(page) {
  await go_tab(page, "sheet");
  await sheet_ready(page);
  await until(page, () => document.querySelector("section[aria-labelledby=hand-link] button") !== null);
  await page.evaluate(() => document.querySelector("section[aria-labelledby=hand-link] button").click());
  return made_link(page);
}

/** Presses one of a line's answers. */
const answer = (page, number, which) => page.evaluate((line, words) => {
  Array.from(document.querySelectorAll(`#line-${line} button.answer`)).find((each) => each.innerText.endsWith(words)).click();
}, number, which);

const counts = (page) => until(page, () => document.getElementById("slip-counts")?.innerText);

in_every_engine("handover", ({ check, engine }) => {
  check("there by link and back by file between two people, with a conflict; twice adds nothing", async (given) => {
    const { page, wig } = await planned(given, `Bell ${HOSTILE}`);
    const link = await handed(page);
    assert.match(link, /#\/open\/0h[A-Za-z0-9_-]+$/);

    const other = await launch(engine);
    try {
      const helper = await open_app(other, link);
      await until(helper, () => document.querySelectorAll(".card.line").length > 0);
      assert.equal(await helper.evaluate(() => location.hash), "#/open", "the address is cleared after reading");
      assert.ok((await text_of(helper)).includes("<img src=x"), "what others wrote is text");
      assert.notEqual(await helper.title(), "1");
      const numbers = await helper.evaluate(() => Array.from(document.querySelectorAll(".card.line"), (each) => Number(each.id.slice(5))));
      const ticks = await helper.evaluate(() => Array.from(document.querySelectorAll(".card.line")).filter((each) => /done as planned/.test(each.innerText)).map((each) => Number(each.id.slice(5))));
      assert.ok(ticks.length >= 2, `${ticks} of ${numbers}`);
      const [first, second] = ticks;
      await answer(helper, first, "done as planned");
      await until(helper, (line) => document.getElementById(`line-${line}-planned-minutes`) !== null, first);
      await fill(helper, `line-${first}-planned-minutes`, "25 min");
      await answer(helper, second, "done otherwise");
      await until(helper, (line) => document.getElementById(`line-${line}-remark`) !== null, second);
      await fill(helper, `line-${second}-remark`, `=1+1 ${HOSTILE}`);
      await fill(helper, "send-who", `Ada ${HOSTILE}`);
      await press(helper, "button", "Save the slip as a file");
      const { text } = await other.download(/slip\.json$/);
      await writeFile(join(directory, `${engine}-slip.json`), text);
      // Closed and opened again, the answers are still there; nothing went among the helper's own wigs.
      await helper.reload();
      await until(helper, () => /2 of \d+ lines answered/.test(document.querySelector(".helper")?.innerText ?? ""));
      await go(helper, "#/");
      assert.deepEqual((await wigs_of(helper)).filter((each) => each.demo === ""), []);
      other.quiet();

      // Meanwhile the second line was done here too, as planned.
      await fill(page, "paper-numbers", String(second));
      await press(page, "button", "Record these");
      await until(page, () => /Recorded: 1 lines/.test(document.getElementById("paper-told")?.innerText ?? ""));

      const slip = join(directory, `${engine}-slip.json`);
      const bring = () => choose_file(page, () => press(page, "button", "Choose the slip’s file"), slip);
      await bring();
      assert.match(await counts(page), /^1 new, 0 here already, 1 recorded here too/);
      assert.match(await page.evaluate(() => document.querySelector("#slip fieldset").innerText), /is recorded twice/);
      await page.evaluate(() => document.querySelectorAll("#slip fieldset input")[2].click());
      await press(page, "button", "Take it in");
      await until(page, () => /^0 new, 2 here already/.test(document.getElementById("slip-counts")?.innerText ?? ""));
      await until(page, () => document.getElementById("slip-taken") !== null);
      await page.reload();
      await until(page, () => document.querySelector(".sheet") !== null);
      await bring();
      assert.match(await counts(page), /^0 new, 2 here already, 0 recorded here too/, "twice adds nothing");
      assert.ok(await page.evaluate(() => document.querySelector("#slip button.primary").disabled));

      await go(page, `#/wig/${wig}/record`);
      const log = await log_of(page);
      assert.equal(log.filter(({ what }) => what.includes("=1+1 <img")).length, 1, "the helper's own words, as text");
      assert.notEqual(await page.title(), "1");

      // Out as a table: no cell is a sum, and it adds nothing to where it came from.
      await go(page, `#/wig/${wig}/sheet`);
      await sheet_ready(page);
      await press(page, "button", "Save the entries as CSV");
      const table = await given.browser.download(/\.csv$/);
      assert.match(table.text, /"'=1\+1 <img/);
      await writeFile(join(directory, `${engine}.csv`), table.text);
      await choose_file(page, () => press(page, "button", "Take in work from CSV"), join(directory, `${engine}.csv`));
      assert.match(await until(page, () => document.querySelector("#table [role=status]")?.innerText), /^0 to add, \d+ here already, 0 left out/);
    } finally {
      await other.close();
    }
  });

  check("a slip by link; one for another wig and a damaged link are refused in plain words", async (given) => {
    const { page, server } = await planned(given, "Bell-founder");
    const link = await handed(page);
    const helper = await open_app(given.browser, link);
    await until(helper, () => document.querySelectorAll(".card.line").length > 0);
    const [first] = await helper.evaluate(() => Array.from(document.querySelectorAll(".card.line")).filter((each) => /done as planned/.test(each.innerText)).map((each) => Number(each.id.slice(5))));
    await answer(helper, first, "done as planned");
    await until(helper, () => document.querySelector("#send-title").parentElement.querySelectorAll("button").length === 2);
    await press(helper, "button", "Make a link");
    const back = await made_link(helper);
    assert.match(back, /#\/open\/0s/);
    await fill(page, "slip-link", back);
    await page.keyboard.press("Enter");
    assert.match(await counts(page), /^1 new/);

    // The same link opened leads to the wig it is for.
    const third = await open_app(given.browser, back);
    assert.match(await counts(third), /^1 new/);
    await start_wig(third, "Another");
    await go_tab(third, "sheet");
    await sheet_ready(third);
    await fill(third, "slip-link", back);
    await third.keyboard.press("Enter");
    assert.match(await until(third, () => document.querySelector("section[aria-labelledby=hand-back] .reason")?.innerText), /for another wig: Bell-founder/);
    for (const [bad, words] of [
      [back.slice(0, -9), /damaged or cut off/], [link.replace("/0h", "/1h"), /newer version/],
      [`${server.url}#/open/0s`, /damaged or cut off/], [link.replace(/.{6}$/, "AAAAAA"), /damaged or cut off/],
    ]) {
      await third.goto("about:blank");
      await third.goto(bad);
      assert.match(await until(third, () => document.querySelector("main .reason")?.innerText), words);
      assert.equal(await third.evaluate(() => document.querySelectorAll(".card.line").length), 0, "nothing is shown of it");
    }
  });
});
