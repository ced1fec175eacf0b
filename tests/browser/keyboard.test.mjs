// The way by keyboard alone: every stop shows its focus, and the focus is never lost.

import assert from "node:assert/strict";
import { focused, tab_to, until } from "./lib/page.mjs";
import { in_every_engine } from "./lib/suite.mjs";
import { answer_where, started, wig_here } from "./lib/app.mjs";

/** Tabs on to a name and checks that the focus can be seen there. */
async function stop_at(page, name) {
  const now = await tab_to(page, name);
  assert.ok(now.ring, `the focus can be seen on ${now.name}`);
  return now;
}

/** Back with Shift to a name. */
async function back_to(page, name) {
  await page.keyboard.down("Shift");
  try {
    return await stop_at(page, name);
  } finally {
    await page.keyboard.up("Shift");
  }
}

const at_heading = (page) => until(page, () => document.activeElement.id === "page-title");
/** The focus comes to rest on something that can show it; it may go there a moment after the change. */
const not_lost = (page) => until(page, () => document.activeElement !== document.body && document.activeElement.isConnected);

in_every_engine("by keyboard alone", ({ check }) => {
  check("from the list of wigs to a recorded row", async (given) => {
    const { page } = await started(given);
    await page.keyboard.press("Tab");
    const skip = await focused(page);
    assert.equal(skip.name, "Skip to the page");
    assert.ok(skip.ring);
    await page.keyboard.press("Enter");
    await at_heading(page);

    await stop_at(page, "Start a wig");
    await page.keyboard.press("Enter");
    await at_heading(page);
    await stop_at(page, "Name");
    await page.keyboard.press("Enter");
    await until(page, () => document.querySelector("#start-note .reason") !== null);
    assert.equal((await focused(page)).id, "start-name", "a refusal keeps the focus at its field");
    await page.keyboard.type("Lamplighter");
    await stop_at(page, "Fibre");
    await page.keyboard.type("Moda");
    await until(page, () => document.getElementById("start-fibre").value === "modacrylic");
    await stop_at(page, "Cap");
    await stop_at(page, "Size");
    await stop_at(page, "Start");
    await page.keyboard.press("Enter");
    await until(page, () => /\/cap$/.test(location.hash));
    await at_heading(page);
    const wig = await wig_here(page);

    await stop_at(page, /^Nape/);
    await page.keyboard.press("Enter");
    await until(page, () => document.querySelector('.zone-button[aria-expanded="true"]') !== null);
    await not_lost(page);

    await stop_at(page, "Next: Base and head");
    await page.keyboard.press("Enter");
    await until(page, () => /\/base$/.test(location.hash));
    await at_heading(page);
    await stop_at(page, "Look");
    await page.keyboard.press("Enter");
    await until(page, () => /\/look$/.test(location.hash));
    await at_heading(page);
    await stop_at(page, "How full it should be");
    await page.keyboard.type("1.3");
    await page.keyboard.press("Enter");
    await until(page, () => /1\.3/.test(document.getElementById("converted").innerText));
    assert.equal((await focused(page)).id, "target", "after saving the focus stays at its field");
    await stop_at(page, "Back to the assumption");
    await page.keyboard.press("Enter");
    await until(page, () => document.getElementById("target").value === "");
    assert.equal((await focused(page)).id, "target", "with the button gone the focus is at its field");
    await page.keyboard.type("1.3");
    await page.keyboard.press("Enter");
    await until(page, () => /Saved at/.test(document.getElementById("saving").innerText) && /1\.3/.test(document.getElementById("converted").innerText));

    await stop_at(page, "Next: Weft to buy");
    await page.keyboard.press("Enter");
    await until(page, () => /\/weft$/.test(location.hash));
    await at_heading(page);
    await stop_at(page, "Add a weft");
    await page.keyboard.press("Enter");
    await until(page, () => document.activeElement.id.startsWith("lot_name-"));
    assert.ok((await focused(page)).ring);
    await page.keyboard.type("Ash weft");
    await page.keyboard.press("Enter");
    await stop_at(page, "Price of a pack");
    await page.keyboard.type("21.50");
    await page.keyboard.press("Enter");
    const { headline, rows } = await answer_where(page, (now) => /^Buy/.test(now.headline) && now.facts.Costs !== undefined);
    assert.match(headline, /^Buy \d/);
    assert.ok((await focused(page)).id.startsWith("pack_price-"));

    await back_to(page, "Sewn: row 1");
    await page.keyboard.press("Enter");
    await answer_where(page, (now) => now.rows === rows - 1);
    await not_lost(page);

    await page.evaluate((id) => { location.hash = `#/wig/${id}/record`; }, wig);
    await at_heading(page);
    await stop_at(page, /^Undo/);
    await page.keyboard.press("Enter");
    await until(page, () => document.querySelector(".confirm") !== null);
    await not_lost(page);
    await stop_at(page, /^No\b/);
    await page.keyboard.press("Enter");
    await until(page, () => document.querySelector(".confirm") === null);
    await not_lost(page);
    await until(page, () => document.activeElement.innerText.startsWith("Undo"));
    await page.keyboard.press("Enter");
    await until(page, () => document.querySelector(".confirm") !== null);
    await until(page, () => document.activeElement.innerText === "Yes");
    assert.ok((await focused(page)).ring);
    await page.keyboard.press("Enter");
    await until(page, () => document.querySelector("ol.log > li.undone") !== null);
    await not_lost(page);
  });
});
