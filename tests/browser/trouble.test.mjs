// The store in trouble: a full disk, a newer version, a damaged database, a tab that must give way.

import assert from "node:assert/strict";
import { files } from "./lib/server.mjs";
import { until } from "./lib/page.mjs";
import { in_every_engine } from "./lib/suite.mjs";
import { store_page } from "./lib/stand_in.mjs";
import { ask, ask_json, error_of, row } from "./lib/rows.mjs";

const built = await store_page();
const ROOM = 20 * 1024 * 1024;

async function tab({ browser, serve }, server = null) {
  const from = server ?? (await serve(files(built)));
  const page = await browser.open(from.url);
  await until(page, () => window.ready);
  return { page, server: from };
}

in_every_engine("store in trouble", ({ check, engine }) => {
  check("a full browser says quota, and what was there stays", async (given) => {
    const { page, server } = await tab(given);
    if (engine === "chromium") {
      // Before the first write: the engine remembers for a while how much room it once found.
      const session = await page.createCDPSession();
      await session.send("Storage.overrideQuotaForOrigin", { origin: new URL(server.url).origin, quotaSize: ROOM });
    }
    await ask(page, "open");
    await ask(page, "add", JSON.stringify([row(1)]));
    const kinds = await page.evaluate(async (room) => {
      // Random bytes, as some engines compress what they store.
      const bytes = new Uint8Array(room / 2);
      for (let at = 0; at < bytes.length; at += 65_536) crypto.getRandomValues(bytes.subarray(at, at + 65_536));
      const seen = [];
      for (let photo = 0; photo < 5; photo += 1) {
        bytes[0] = photo;
        const hash = await window.texts.sha256(bytes);
        try {
          seen.push(await window.store.put_blob(hash, bytes, new Uint8Array(1), "image/jpeg"));
        } catch (error) {
          seen.push(error.kind);
        }
      }
      return seen;
    }, ROOM);
    assert.ok(kinds.includes("quota"), `real answers: ${kinds}`);
    assert.deepEqual(kinds.filter((kind) => kind !== "stored" && kind !== "quota"), []);
    assert.equal((await ask_json(page, "all")).rows.length, 1);
  });

  check("every spelling of a full disk is told apart from other errors", async (given) => {
    const { page } = await tab(given);
    const cases = [
      ["QuotaExceededError", "", "quota"], ["NS_ERROR_DOM_QUOTA_REACHED", "", "quota"], ["NS_ERROR_FILE_NO_DEVICE_SPACE", "", "quota"],
      ["UnknownError", "Encountered full disk while opening backing store for indexedDB.open.", "quota"],
      ["UnknownError", "Internal error.", "unreadable"], ["AbortError", "", "aborted"], ["VersionError", "", "newer"],
      ["InvalidStateError", "The database connection is closing.", "closed"], ["ConstraintError", "", "other"],
    ];
    for (const [name, message, kind] of cases) {
      assert.equal(await page.evaluate((words, called) => window.kind_of({ name: called, message: words }), message, name), kind, `${name} ${message}`);
    }
    assert.deepEqual(await page.evaluate(() => [{ code: 22 }, { code: 1014 }, new TypeError("x"), "text", null].map(window.kind_of)), ["quota", "quota", "other", "other", "other"]);
  });

  check("made by a newer version is an answer of its own, and its rows can still be saved", async (given) => {
    const { page } = await tab(given);
    await ask(page, "open");
    await ask(page, "add", JSON.stringify([row(1)]));
    // A newer version takes the database over; this tab gives way and says so.
    assert.equal(await page.evaluate(() => window.raw(7, ["something_new"])), true);
    await until(page, () => window.heard.some(({ event }) => event === "closed"));
    assert.equal((await error_of(page, "add", JSON.stringify([row(2)]))).kind, "closed");
    const again = await ask_json(page, "open");
    assert.deepEqual([again.answer, again.kind], ["newer", "newer"]);
    assert.match(again.message, /newer version/);
    assert.deepEqual((await ask_json(page, "backup_text", "a test", "2026-11-25T09:31:02Z")).rows, [row(1, { lamport: 1 })]);
  });

  check("a database that is not ours to read is unreadable, and left as it is", async (given) => {
    const { page } = await tab(given);
    await page.evaluate(() => window.raw(1, ["entries"]));
    const answer = await ask_json(page, "open");
    assert.deepEqual([answer.answer, answer.kind], ["unreadable", "unreadable"]);
    assert.match(answer.detail, /clashes, people, blobs, meta/);
    assert.deepEqual(await page.evaluate(async () => (await indexedDB.databases()).map(({ name, version }) => `${name} ${version}`)), ["weftbook 1"]);
  });

  check("saving from a browser that has nothing gives an empty file and creates nothing", async (given) => {
    const { page } = await tab(given);
    const backup = await ask_json(page, "backup_text", "a test", "2026-11-25T09:31:02Z");
    assert.deepEqual([backup.rows, backup.clashes, backup.people, backup.blobs], [[], [], [], []]);
    assert.equal((await ask_json(page, "open")).fresh, true);
  });

  check("opening is tried once more, then reported, and works when the trouble is over", async (given) => {
    const { page } = await tab(given);
    await page.evaluate(() => window.faults.fail_open(1));
    assert.equal((await ask_json(page, "open")).answer, "ready");
    const { page: other } = await tab(given);
    await other.evaluate(() => window.faults.fail_open(2));
    const answer = await ask_json(other, "open");
    assert.deepEqual([answer.answer, answer.kind], ["unreadable", "unreadable"]);
    assert.match(answer.detail, /backing store/);
    assert.deepEqual(await ask_json(other, "open"), { answer: "ready", fresh: true, detail: "" });
  });

  check("a tab that does not give way is reported, not waited for", async (given) => {
    const { page, server } = await tab(given);
    // Another tab with an older layout that ignores the request to close.
    await page.evaluate(() => new Promise((resolve) => {
      const request = indexedDB.open("weftbook", 1);
      request.onsuccess = () => {
        window.stubborn = request.result;
        const removal = indexedDB.deleteDatabase("weftbook");
        removal.onblocked = resolve;
      };
    }));
    const { page: second } = await tab(given, server);
    const answer = await second.evaluate(async () => {
      const wait = window.setTimeout;
      // The store's patience of ten seconds, shortened for the test.
      window.setTimeout = (act, ms, ...rest) => wait(act, ms / 50, ...rest);
      return JSON.parse(await window.store.open());
    });
    assert.deepEqual([answer.answer, answer.kind], ["unreadable", "blocked"]);
    assert.match(answer.message, /Close the other Weftbook tabs/);
    await page.evaluate(() => window.stubborn.close());
    assert.equal((await ask_json(second, "open")).answer, "ready");
  });
}, { preferences: { "dom.quotaManager.temporaryStorage.fixedLimit": ROOM / 1024 } });
