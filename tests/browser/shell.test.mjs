// What the app asks of the browser: files in and out, clock, ids, leaving, focus; and a browser that is
// closed and started again.

import assert from "node:assert/strict";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { ENGINES, launch } from "./lib/browser.mjs";
import { choose_file, press, until } from "./lib/page.mjs";
import { ask, ask_json, row } from "./lib/rows.mjs";
import { files, serve } from "./lib/server.mjs";
import { store_page } from "./lib/stand_in.mjs";
import { in_every_engine } from "./lib/suite.mjs";

const built = await store_page();
let directory;
before(async () => { directory = await mkdtemp(join(tmpdir(), "weftbook-files-")); });
after(() => rm(directory, { recursive: true }));

async function tab({ browser, serve: serve_here }) {
  const server = await serve_here(files(built));
  const page = await browser.open(server.url);
  await until(page, () => window.ready);
  return page;
}

in_every_engine("shell", ({ check }) => {
  check("clock and ids have the record's form", async (given) => {
    const page = await tab(given);
    const [local, utc, ids] = await page.evaluate(() =>
      [window.shell.now_local_minute(), window.shell.now_utc(), Array.from({ length: 1000 }, window.shell.random_id)]);
    assert.match(local, /^\d{4}-\d\d-\d\dT\d\d:\d\d$/);
    assert.match(utc, /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/);
    assert.ok(ids.every((id) => /^[0-9a-f]{32}$/.test(id)));
    assert.equal(new Set(ids).size, 1000);
    // Local means local: the page's own offset lies between the two.
    const offset = await page.evaluate((at) => new Date(at).getTimezoneOffset(), utc);
    const apart = (Date.parse(`${local}:00Z`) - Date.parse(utc)) / 60_000 + offset;
    assert.ok(apart > -1.1 && apart <= 0.1, `${local} against ${utc} with an offset of ${offset} min`);
  });

  check("a text goes out as a file, byte for byte", async (given) => {
    const page = await tab(given);
    const text = "wig, né, 🧵\r\nline two\n";
    await page.evaluate((words) => window.shell.download("out-1.csv", "text/csv", words), text);
    assert.deepEqual(await given.browser.download(/^out-1\.csv$/), { name: "out-1.csv", text });
  });

  check("a text comes in; too large, not a text, and none at all are told apart", async (given) => {
    const page = await tab(given);
    await page.evaluate(() => {
      const button = document.createElement("button");
      button.textContent = "Choose";
      button.addEventListener("click", () => {
        window.picked = null;
        window.shell.pick_text_file(".json,.txt", 100).then(
          (value) => { window.picked = { value }; },
          ({ kind, message }) => { window.picked = { kind, message }; },
        );
      });
      document.body.append(button);
    });
    const choose = async (name, bytes) => {
      const path = name && join(directory, name);
      if (path) await writeFile(path, bytes);
      await choose_file(page, () => press(page, "button", "Choose"), path);
      return until(page, () => window.picked);
    };
    assert.deepEqual(await choose("good.json", '{"é":"🧵"}'), { value: { name: "good.json", text: '{"é":"🧵"}' } });
    assert.deepEqual(await choose("edge.txt", "x".repeat(100)), { value: { name: "edge.txt", text: "x".repeat(100) } });
    const large = await choose("large.txt", "x".repeat(101));
    assert.equal(large.kind, "size");
    assert.match(large.message, /large\.txt has 101 bytes.* at most 100/);
    const odd = await choose("odd.txt", Buffer.from([0xff, 0xfe, 0x00]));
    assert.equal(odd.kind, "encoding");
    assert.match(odd.message, /odd\.txt is not a text file in UTF-8/);
    assert.deepEqual(await choose(null), { value: null });
  });

  check("leaving is heard, until no longer wanted", async (given) => {
    const page = await tab(given);
    const counts = await page.evaluate(() => {
      let heard = 0;
      const stop = window.shell.on_hide(() => { heard += 1; });
      const hide = (state) => {
        Object.defineProperty(document, "visibilityState", { value: state, configurable: true });
        document.dispatchEvent(new Event("visibilitychange"));
      };
      const seen = [];
      for (const act of [() => hide("hidden"), () => hide("visible"), () => window.dispatchEvent(new Event("pagehide")), stop, () => hide("hidden")]) {
        act();
        seen.push(heard);
      }
      return seen;
    });
    assert.deepEqual(counts, [1, 1, 2, 2, 2]);
  });

  check("the focus goes to what is named, also to a heading", async (given) => {
    const page = await tab(given);
    const answers = await page.evaluate(() => {
      const heading = document.querySelector("h1");
      heading.id = "top";
      const field = document.createElement("input");
      field.id = "field";
      document.body.append(field);
      return ["top", "field", "nowhere"].map((id) => [window.shell.focus_id(id), document.activeElement.id]);
    });
    assert.deepEqual(answers, [[true, "top"], [true, "field"], [false, "field"]]);
  });

  check("whether records are kept is answered in words", async (given) => {
    const page = await tab(given);
    assert.ok(["yes", "no"].includes(await page.evaluate(() => window.shell.persisted())));
    assert.equal(await page.evaluate(() => {
      Object.defineProperty(navigator, "storage", { value: undefined, configurable: true });
      return window.shell.persisted();
    }), "unknown");
    assert.equal(await page.evaluate(() => window.shell.persist()), "unknown");
  });
});

for (const engine of ENGINES) {
  test(`records outlive the browser in ${engine}`, { timeout: 60_000 }, async () => {
    const profile = await mkdtemp(join(tmpdir(), "weftbook-profile-"));
    const server = await serve(files(built));
    try {
      for (const start of [1, 2]) {
        const browser = await launch(engine, { profile });
        try {
          const page = await browser.open(server.url);
          await until(page, () => window.ready);
          assert.equal((await ask_json(page, "open")).fresh, start === 1);
          await ask(page, "add", JSON.stringify([row(start)]));
          assert.deepEqual((await ask_json(page, "all")).rows.map(({ lamport }) => lamport), start === 1 ? [1] : [1, 2]);
          browser.quiet();
        } finally {
          await browser.close();
        }
      }
    } finally {
      await server.stop();
      await rm(profile, { recursive: true, force: true, maxRetries: 5 });
    }
  });
}
