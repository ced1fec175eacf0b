// Starting, and stopping: boot on poor servers, the crash screen, and what still runs after it (nothing).

import assert from "node:assert/strict";
import { join } from "node:path";
import { mkdtemp, mkdir, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname } from "node:path";
import { pathToFileURL } from "node:url";
import { axe, by_label, by_role, force_colours, picture, press, tab_to, text_of, until } from "./lib/page.mjs";
import { files } from "./lib/server.mjs";
import { in_every_engine } from "./lib/suite.mjs";
import { stand_in } from "./lib/stand_in.mjs";
import { row } from "./lib/rows.mjs";

const built = await stand_in();
// The trap after a panic, as each engine words it.
const TRAP = [/unreachable/];
const has_stopped = () => document.querySelector("h1")?.innerText === "Weftbook has stopped";

function with_changes(changes) {
  const changed = new Map(built);
  for (const [name, bytes] of Object.entries(changes)) {
    if (bytes === null) changed.delete(name);
    else changed.set(name, bytes);
  }
  return files(changed);
}

async function started({ browser, serve }, options, address = "") {
  const server = await serve(files(built), options);
  const page = await browser.open(server.url + address, { allow: TRAP });
  await until(page, () => window.ready);
  return { page, server };
}

in_every_engine("start and stop", ({ check, engine }) => {
  for (const [name, options] of [
    ["an ordinary server", {}],
    ["a sub-path", { prefix: "/some/sub/path/" }],
    ["a server without headers", { headers: "none", prefix: "/deep/" }],
    ["a server with the wrong type for WebAssembly", { headers: "wrong-wasm" }],
  ]) {
    check(`starts from ${name}`, async (given) => {
      const { page } = await started(given, options);
      await press(page, "button", "Enter");
      assert.ok(await page.evaluate(() => window.hits > 0));
    });
  }

  check("a panic leaves the crash screen and nothing else running", async (given) => {
    const { page } = await started(given, {}, "#/wig/1");
    await until(page, () => window.hits > 3);
    await press(page, "button", "Panic");
    await until(page, has_stopped);
    assert.equal(await page.evaluate(() => document.activeElement.id), "crash-heading", "the focus is on the heading");
    const hits = await page.evaluate(() => window.hits);
    await page.keyboard.press("a");
    await page.evaluate(() => new Promise((later) => setTimeout(later, 200)));
    assert.equal(await page.evaluate(() => window.hits), hits, "timers and keys no longer get into the old app");
    assert.equal(await page.evaluate(() => document.getElementById("app")), null);
    const box = await by_label(page, "For whoever mends it; copy it if you like. It may contain words from your records.");
    assert.match(await box.evaluate((each) => each.value), /a stand-in panic/);
    assert.equal(await box.evaluate((each) => each.readOnly), true);
    assert.deepEqual(await axe(page), []);
    await page.setViewport({ width: 320, height: 700 });
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= 320), "no sideways scrolling at 320 px");
    await picture(page, `crash-${engine}-320`);
    await page.setViewport({ width: 768, height: 900 });
  });

  check("the crash screen saves every raw record, by keyboard, without WebAssembly", async (given) => {
    const { page } = await started(given);
    await page.evaluate(async (rows) => {
      await window.stand_in.open();
      await window.stand_in.add(rows);
    }, JSON.stringify([row(1), row(2)]));
    await press(page, "button", "Panic");
    await until(page, has_stopped);
    const reached = await tab_to(page, "Save all raw records to a file", 1);
    assert.ok(reached.ring, "the focus can be seen");
    await page.keyboard.press("Enter");
    await until(page, () => /Handed to the browser/.test(document.querySelector("[role=status]").innerText));
    assert.match(await text_of(page), /2 entries, 0 people, 0 photos/);
    const { name, text } = await given.browser.download(/^weftbook-records-.*\.json$/);
    assert.match(name, /^weftbook-records-\d{4}-\d\d-\d\dT\d{6}\.json$/);
    const backup = JSON.parse(text);
    assert.deepEqual([backup.weftbook, backup.version, backup.producer], ["backup", 0, "Weftbook crash screen, app-one"]);
    assert.deepEqual(backup.rows, [row(1, { lamport: 1 }), row(2, { lamport: 2 })]);
    await press(page, "button", "Open again");
    await until(page, () => window.ready && !document.querySelector(".crash"));
  });

  check("the crash screen can leave the page that crashes", async (given) => {
    const { page } = await started(given, {}, "#/wig/1");
    await press(page, "button", "Panic");
    await until(page, has_stopped);
    await press(page, "button", "Open again at the list of wigs");
    await until(page, () => window.ready && !document.querySelector(".crash"));
    assert.equal(await page.evaluate(() => location.hash), "");
  });

  for (const [name, changes, said] of [
    ["the WebAssembly is missing", { "app-one/weftbook_bg.wasm": null }, /could not be fetched: the server answered 404/],
    ["the WebAssembly is damaged", { "app-one/weftbook_bg.wasm": "<!doctype html>" }, /could not be started[^]*(magic|Compile)/],
    ["the app's script is missing", { "app-one/weftbook.js": null }, /could not be started/],
    ["the app's script is broken", { "app-one/weftbook.js": "export default () => { throw new Error('a broken start') }" }, /a broken start/],
  ]) {
    check(`where ${name}, the crash screen says so and still saves`, async (given) => {
      const server = await given.serve(with_changes(changes));
      const page = await given.browser.open(server.url, { allow: [/404/, /preload/, /MIME/] });
      await until(page, has_stopped);
      const box = await by_role(page, "textbox");
      assert.match(await box.evaluate((each) => each.value), said);
      await press(page, "button", "Save all raw records to a file");
      const { text } = await given.browser.download(/^weftbook-records-.*\.json$/);
      assert.deepEqual(JSON.parse(text).rows, []);
    });
  }

  check("where a part of boot itself is missing, the page says so", async (given) => {
    const server = await given.serve(with_changes({ "app-one/texts.js": null }));
    const page = await given.browser.open(server.url, { allow: [/404/, /texts\.js/, /MIME/] });
    await until(page, () => !document.getElementById("part-missing").hidden);
    assert.match(await text_of(page), /A part of Weftbook could not be loaded/);
  });

  check("opened from a disk, the page says that it needs a server", async ({ browser }) => {
    const directory = await mkdtemp(join(tmpdir(), "weftbook-disk-"));
    try {
      for (const [name, bytes] of built) {
        const full = join(directory, name);
        await mkdir(dirname(full), { recursive: true });
        await writeFile(full, bytes);
      }
      const page = await browser.open(null, { allow: [/./] });
      await page.goto(pathToFileURL(join(directory, "index.html")).href);
      await until(page, () => !document.getElementById("needs-server").hidden);
      assert.match(await text_of(page), /Put the folder on any web server/);
    } finally {
      await rm(directory, { recursive: true });
    }
  });

  check("without JavaScript the page says why it needs it", async ({ browser, serve }) => {
    // The BiDi engine cannot switch scripts off; there the text's presence is all that can be seen.
    const server = await serve(files(built));
    const page = await browser.open();
    if (engine === "chromium") {
      await page.setJavaScriptEnabled(false);
      await page.goto(server.url);
      assert.match(await text_of(page), /needs JavaScript/);
    } else {
      assert.match(built.get("index.html"), /<noscript><p>[^<]*needs JavaScript/);
    }
  });
});

in_every_engine("the crash screen in the dark", ({ check, engine }) => {
  check("axe finds nothing in dark colours", async (given) => {
    const { page } = await started(given);
    await press(page, "button", "Panic");
    await until(page, has_stopped);
    assert.equal(await page.evaluate(() => matchMedia("(prefers-color-scheme: dark)").matches), true);
    assert.deepEqual(await axe(page), []);
    await picture(page, `crash-${engine}-dark`);
    if (await force_colours(page)) {
      const border = await page.evaluate(() => getComputedStyle(document.querySelector(".crash button")).borderTopStyle);
      assert.equal(border, "solid", "a button keeps its edge where colours are forced");
      await picture(page, `crash-${engine}-forced`);
    }
  });
}, { dark: true });
