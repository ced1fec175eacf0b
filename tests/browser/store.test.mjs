// The store alone, in both engines: what it answers, what it keeps, and that it never says "saved" early.

import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { files } from "./lib/server.mjs";
import { until } from "./lib/page.mjs";
import { in_every_engine } from "./lib/suite.mjs";
import { store_page } from "./lib/stand_in.mjs";
import { ask, ask_json, error_of, OTHER_WIG, row, WIG } from "./lib/rows.mjs";

const built = await store_page();
const person = (number, more) => ({ id: number.toString(16).padStart(32, "0"), ...more });

async function tab(browser, server, options) {
  const page = await browser.open(server.url, options);
  await until(page, () => window.ready);
  return page;
}

async function ready_tab({ browser, serve }) {
  const server = await serve(files(built));
  const page = await tab(browser, server);
  assert.equal((await ask_json(page, "open")).answer, "ready");
  return { page, server };
}

in_every_engine("store", ({ check, engine }) => {
  check("a new browser is ready and fresh, then no longer fresh", async ({ browser, serve }) => {
    const server = await serve(files(built));
    const first = await tab(browser, server);
    assert.deepEqual(await ask_json(first, "open"), { answer: "ready", fresh: true, detail: "" });
    const second = await tab(browser, server);
    assert.deepEqual(await ask_json(second, "open"), { answer: "ready", fresh: false, detail: "" });
  });

  check("before it is open every call says closed", async ({ browser, serve }) => {
    const page = await tab(browser, await serve(files(built)));
    assert.equal((await error_of(page, "all")).kind, "closed");
    assert.equal((await error_of(page, "add", JSON.stringify([row(1)]))).kind, "closed");
  });

  check("rows come back as they were given, with the next lamport", async (given) => {
    const { page } = await ready_tab(given);
    const stored = await ask_json(page, "add", JSON.stringify([row(1), row(2, { lamport: 77 })]));
    assert.deepEqual(stored, [row(1, { lamport: 1 }), row(2, { lamport: 2 })]);
    await ask(page, "add", JSON.stringify([row(3, { log: "workshop" })]));
    assert.deepEqual(await ask_json(page, "all"), { rows: [...stored, row(3, { log: "workshop", lamport: 3 })], clashes: [] });
    assert.deepEqual((await ask_json(page, "by_log", "workshop")).rows.map(({ lamport }) => lamport), [3]);
    assert.deepEqual((await ask_json(page, "by_log", OTHER_WIG)).rows, []);
  });

  check("every write is strict", async (given) => {
    const { page } = await ready_tab(given);
    await page.evaluate(() => window.faults.watch());
    const hash = createHash("sha256").update(Buffer.from([1, 2, 3])).digest("hex");
    await ask(page, "add", JSON.stringify([row(1)]));
    await ask(page, "take_in", JSON.stringify([row(2, { lamport: 9 })]));
    await ask(page, "put_meta", "last backup", "2026-11-25");
    await ask(page, "put_person", JSON.stringify(person(1, { name: "A" })));
    await ask(page, "take_in_people", JSON.stringify([person(2, { name: "B" })]));
    await page.evaluate((sha) => window.store.put_blob(sha, new Uint8Array([1, 2, 3]), new Uint8Array([4]), "image/jpeg"), hash);
    await ask(page, "forget_blob", hash);
    await ask(page, "backup_text", "a test", "2026-11-25T09:31:02Z");
    const seen = await page.evaluate(() => window.seen);
    const writes = seen.filter(({ mode }) => mode === "readwrite");
    assert.equal(writes.length, 7);
    assert.deepEqual(writes.filter(({ durability }) => durability !== "strict"), []);
    assert.equal(seen.length, 8);
  });

  check("a transaction aborted after its last request succeeded is not called saved", async (given) => {
    const { page, server } = await ready_tab(given);
    const other = await tab(given.browser, server);
    await page.evaluate(() => window.faults.abort_after_add(2));
    const error = await error_of(page, "add", JSON.stringify([row(1), row(2)]));
    assert.equal(error.kind, "aborted");
    assert.equal(await page.evaluate(() => window.successes), 2, "both requests had succeeded");
    await page.evaluate(() => window.faults.mend());
    assert.deepEqual((await ask_json(page, "all")).rows, []);
    assert.equal((await ask_json(page, "add", JSON.stringify([row(1)])))[0].lamport, 1, "the number is free again");
    // The other tab hears of what was committed, and never of what was not.
    await until(other, () => window.heard.length > 0);
    assert.deepEqual(await other.evaluate(() => window.heard), [{ event: "rows", log: WIG, ids: [row(1).id] }]);
  });

  check("an id that is already there refuses the whole addition", async (given) => {
    const { page } = await ready_tab(given);
    await ask(page, "add", JSON.stringify([row(1)]));
    assert.equal((await error_of(page, "add", JSON.stringify([row(2), row(1)]))).kind, "other");
    assert.equal((await ask_json(page, "all")).rows.length, 1);
  });

  check("bad rows are refused by field, value and remedy", async (given) => {
    const { page } = await ready_tab(given);
    const cases = [
      ["add", "{", "cannot be read as JSON"],
      ["add", "{}", "give a list"],
      ["add", JSON.stringify([row(1, { id: "xyz" })]), 'rows[0].id is "xyz"'],
      ["add", JSON.stringify([row(1), row(2, { log: "" })]), 'rows[1].log is ""'],
      ["take_in", JSON.stringify([row(1, { lamport: 1.5 })]), "rows[0].lamport is 1.5"],
      ["take_in", JSON.stringify([row(1, { lamport: -1 })]), "rows[0].lamport is -1"],
      ["take_in", JSON.stringify([row(1, { lamport: 2 ** 53 })]), "rows[0].lamport is 9007199254740992"],
      ["put_person", '{"name":"A"}', "people[0].id is missing"],
    ];
    for (const [name, text, part] of cases) {
      const { message } = await error_of(page, name, text);
      assert.ok(message.includes(part), `${name} ${text}: ${message}`);
    }
    assert.deepEqual(await ask_json(page, "all"), { rows: [], clashes: [] });
  });

  check("two tabs at once never share a lamport, and hear each other after the commit", async ({ browser, serve }) => {
    const server = await serve(files(built));
    const tabs = [await tab(browser, server), await tab(browser, server)];
    for (const page of tabs) {
      assert.equal((await ask_json(page, "open")).answer, "ready");
      // Whoever hears of a row reads it at once: it must be there.
      await page.evaluate(() => {
        window.early = [];
        window.store.subscribe(async (text) => {
          const { ids, log } = JSON.parse(text);
          const there = new Set(JSON.parse(await window.store.by_log(log)).rows.map(({ id }) => id));
          for (const id of ids) if (!there.has(id)) window.early.push(id);
        });
      });
    }
    const write = (page, from) => page.evaluate(async (rows) => {
      const stored = await Promise.all(rows.map((each) => window.store.add(JSON.stringify([each]))));
      return stored.map((text) => JSON.parse(text)[0].lamport);
    }, Array.from({ length: 40 }, (_, index) => row(from + index)));
    const lamports = (await Promise.all([write(tabs[0], 1000), write(tabs[1], 2000)])).flat();
    assert.deepEqual([...lamports].sort((a, b) => a - b), Array.from({ length: 80 }, (_, index) => index + 1));
    for (const page of tabs) {
      await until(page, () => window.heard.flatMap(({ ids }) => ids).length === 40);
      assert.deepEqual(await page.evaluate(() => window.early), []);
      assert.deepEqual(await page.evaluate(() => window.heard.map(({ event, log }) => `${event} ${log}`).filter((each, at, all) => all.indexOf(each) === at)), [`rows ${WIG}`]);
    }
  });

  check("taking in is a union: again changes nothing, other bytes are kept beside", async (given) => {
    const { page } = await ready_tab(given);
    const [mine] = await ask_json(page, "add", JSON.stringify([row(1)]));
    const file = [mine, row(2, { lamport: 40 }), { ...mine, body: { ...mine.body, text: "other words" } }];
    assert.deepEqual(await ask_json(page, "take_in", JSON.stringify(file)), { added: 1, same: 1, clashes: 1 });
    const once = await ask(page, "all");
    assert.deepEqual(await ask_json(page, "take_in", JSON.stringify(file)), { added: 0, same: 3, clashes: 0 });
    // The order of a row's keys is not a difference.
    const turned = Object.fromEntries(Object.entries(mine).reverse());
    assert.deepEqual(await ask_json(page, "take_in", JSON.stringify([turned])), { added: 0, same: 1, clashes: 0 });
    assert.equal(await ask(page, "all"), once);
    const { rows, clashes } = JSON.parse(once);
    assert.deepEqual([rows.length, clashes.length, clashes[0].body.text], [2, 1, "other words"]);
    assert.equal((await ask_json(page, "by_log", WIG)).clashes.length, 1);
    assert.equal((await ask_json(page, "add", JSON.stringify([row(3)])))[0].lamport, 41, "one more than the highest seen");
  });

  check("a lamport seen only in a clash counts too, and one id twice in a file is a clash", async (given) => {
    const { page } = await ready_tab(given);
    const file = [row(1, { lamport: 5 }), row(1, { lamport: 90 }), row(1, { lamport: 5 })];
    assert.deepEqual(await ask_json(page, "take_in", JSON.stringify(file)), { added: 1, same: 1, clashes: 1 });
    assert.equal((await ask_json(page, "add", JSON.stringify([row(2)])))[0].lamport, 91);
  });

  check("forgetting a person wins over every later name", async (given) => {
    const { page } = await ready_tab(given);
    await ask(page, "put_person", JSON.stringify(person(1, { name: "A", head: "570" })));
    assert.deepEqual(await ask_json(page, "put_person", JSON.stringify(person(1, { name: "Anna" }))), person(1, { name: "Anna" }));
    await ask(page, "put_person", JSON.stringify(person(1, { forgotten: true, name: "left over" })));
    const mark = person(1, { forgotten: true });
    assert.deepEqual(await ask_json(page, "put_person", JSON.stringify(person(1, { name: "back" }))), mark);
    const taken = await ask_json(page, "take_in_people", JSON.stringify([person(1, { name: "back" }), person(2, { name: "B" })]));
    assert.deepEqual(taken, [mark, person(2, { name: "B" })]);
    await ask(page, "take_in_people", JSON.stringify([person(2, { name: "other" })]));
    assert.deepEqual(await ask_json(page, "get_people"), [mark, person(2, { name: "B" })]);
    await ask(page, "take_in_people", JSON.stringify([person(2, { forgotten: true })]));
    assert.deepEqual((await ask_json(page, "get_people"))[1], person(2, { forgotten: true }));
  });

  check("photos are kept by hash, checked, and forgotten for good", async (given) => {
    const { page } = await ready_tab(given);
    const bytes = Array.from({ length: 60_000 }, (_, index) => index % 251);
    const hash = createHash("sha256").update(Buffer.from(bytes)).digest("hex");
    const put = (sha) => page.evaluate(async (name, list) => {
      try {
        return await window.store.put_blob(name, new Uint8Array(list), new Uint8Array([9, 9]), "image/jpeg");
      } catch (error) {
        return error.message;
      }
    }, sha, bytes);
    assert.match(await put("0".repeat(64)), /choose the photo again/);
    assert.equal(await put(hash), "stored");
    assert.equal(await put(hash), "known");
    assert.deepEqual(await ask_json(page, "list_blobs"), [{ sha256: hash, type: "image/jpeg", size: 60_000 }]);
    assert.equal(await page.evaluate(async (sha) => (await window.store.get_blob(sha)).bytes.length, hash), 60_000);
    const { blobs } = await ask_json(page, "backup_text", "a test", "2026-11-25T09:31:02Z");
    assert.deepEqual([...Buffer.from(blobs[0].base64, "base64")], bytes);
    assert.deepEqual(Buffer.from(blobs[0].thumb, "base64"), Buffer.from([9, 9]));
    await ask(page, "forget_blob", hash);
    assert.equal(await put(hash), "forgotten");
    assert.equal(await ask(page, "get_blob", hash), null);
    assert.deepEqual(await ask_json(page, "list_blobs"), [{ sha256: hash, forgotten: true }]);
  });

  check("a backup goes into an empty browser and comes out the same", async (given) => {
    const { page } = await ready_tab(given);
    const odd = { body: { kind: "note", v: 0, text: 'é 🧵 "quoted" \\ \n \u2028 \u0001', "\u{1f9f5}": "1", "\uffee": "2" } };
    await ask(page, "add", JSON.stringify([row(1, odd), row(2)]));
    await ask(page, "take_in", JSON.stringify([row(1, { lamport: 3 })]));
    await ask(page, "put_person", JSON.stringify(person(1, { forgotten: true })));
    await ask(page, "put_meta", "last backup", "never");
    assert.equal(await ask(page, "get_meta", "last backup"), "never");
    assert.equal(await ask(page, "get_meta", "nothing"), null);
    const text = await ask(page, "backup_text", "a test", "2026-11-25T09:31:02Z");
    const backup = JSON.parse(text);
    assert.deepEqual(Object.keys(backup), ["weftbook", "version", "producer", "made", "sha256", "rows", "clashes", "people", "blobs"]);
    assert.deepEqual([backup.weftbook, backup.version, backup.producer, backup.made], ["backup", 0, "a test", "2026-11-25T09:31:02Z"]);
    const rows_text = text.slice(text.indexOf('"rows":') + 7, text.indexOf(',"clashes":['));
    assert.equal(createHash("sha256").update(rows_text).digest("hex"), backup.sha256, "of the rows exactly as written");
    assert.ok(rows_text.indexOf('"\uffee"') < rows_text.indexOf('"\u{1f9f5}"'), "keys by code point, as UTF-8 sorts");
    assert.deepEqual(backup.rows[0], row(1, { ...odd, lamport: 1 }));

    const other = await given.serve(files(built));
    const fresh = await tab(given.browser, other);
    await ask(fresh, "open");
    assert.deepEqual(await ask_json(fresh, "take_in", JSON.stringify([...backup.rows, ...backup.clashes])), { added: 2, same: 0, clashes: 1 });
    await ask(fresh, "take_in_people", JSON.stringify(backup.people));
    assert.equal(await ask(fresh, "backup_text", "a test", "2026-11-25T09:31:02Z"), text);
  });

  check("one row the browser cannot read costs only itself", async (given) => {
    const { page } = await ready_tab(given);
    await ask(page, "add", JSON.stringify([row(1), row(2), row(3)]));
    await page.evaluate(() => {
      const plain = IDBObjectStore.prototype.get;
      IDBObjectStore.prototype.get = function (key) {
        if (!key.endsWith("2")) return plain.call(this, key);
        const request = {};
        setTimeout(() => request.onerror({ preventDefault() {}, stopPropagation() {} }));
        return request;
      };
    });
    const backup = await ask_json(page, "backup_text", "a test", "2026-11-25T09:31:02Z");
    assert.deepEqual(backup.rows.map(({ lamport }) => lamport), [1, 3]);
    assert.deepEqual(backup.unread, [{ store: "entries", key: row(2).id }]);
  });

  check("ten thousand rows go in and come out whole", async (given) => {
    const { page } = await ready_tab(given);
    const rows = JSON.stringify(Array.from({ length: 10_000 }, (_, index) => row(index + 1, { lamport: index + 1 })));
    const spent = await page.evaluate(async (text) => {
      const at = [performance.now()];
      const counts = await window.store.take_in(text);
      at.push(performance.now());
      await window.store.take_in(text);
      at.push(performance.now());
      const all = await window.store.all();
      at.push(performance.now());
      const backup = await window.store.backup_text("a test", "now");
      at.push(performance.now());
      const single = performance.now();
      await window.store.add(JSON.stringify([{ ...JSON.parse(text)[0], id: "f".repeat(32) }]));
      return { counts, rows: JSON.parse(all).rows.length, saved: JSON.parse(backup).rows.length,
        ms: [...at.slice(1).map((time, index) => Math.round(time - at[index])), Math.round(performance.now() - single)] };
    }, rows);
    assert.equal(spent.counts, '{"added":10000,"same":0,"clashes":0}');
    assert.deepEqual([spent.rows, spent.saved], [10_000, 10_000]);
    console.log(`${engine}: take in, again, read all, back up, add one: ${spent.ms} ms`);
  });
});
