// What is kept and what is not: failures that stay on the screen, two tabs, drafts, backups, the demo;
// and that the page talks to nobody.

import assert from "node:assert/strict";
import { execFile } from "node:child_process";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before } from "node:test";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { choose_file, focused, press, text_of, until } from "./lib/page.mjs";
import { in_every_engine } from "./lib/suite.mjs";
import {
  abort_writes, answer, answer_where, enter, fill, follow, go, go_tab, log_of, open_app, pick, start_wig, started, text_at,
  today_in, value_of, wigs_of,
} from "./lib/app.mjs";

const DEMO_FILE = fileURLToPath(new URL("../../demo-data/copper-bob.wig.json", import.meta.url));
let directory;
before(async () => { directory = await mkdtemp(join(tmpdir(), "weftbook-kept-")); });
after(() => rm(directory, { recursive: true }));

const own = async (page) => (await wigs_of(page)).filter(({ demo }) => demo === "").map(({ name }) => name);
const failed = (page) => until(page, () => document.getElementById("not-saved")?.checkVisibility());

in_every_engine("kept", ({ check, engine }) => {
  check("opens from a server with the wrong type for WebAssembly", async (given) => {
    const { page } = await started(given, { options: { prefix: "/some/sub/path/", headers: "wrong-wasm" } });
    assert.equal((await wigs_of(page))[0].name, "Copper bob");
  });

  check("a write taken back after its last request is never called saved, and nothing of it is lost", async (given) => {
    const { page } = await started(given, { first: [abort_writes] });
    await start_wig(page, "Baker");
    await go_tab(page, "base");
    await page.evaluate(() => {
      window.aborting = true;
      window.told = [];
      new MutationObserver(() => window.told.push(document.getElementById("saving").innerText))
        .observe(document.getElementById("saving"), { childList: true, characterData: true, subtree: true });
    });
    await fill(page, "girth", "58");
    await page.keyboard.press("Enter");
    await failed(page);
    assert.ok(await page.evaluate(() => window.aborted) > 0);
    assert.match(await text_at(page, "saving"), /Not saved/);
    assert.deepEqual((await page.evaluate(() => window.told)).filter((words) => /Saved/.test(words)), []);
    assert.equal(await value_of(page, "girth"), "58");
    // Far down a long page of a phone, both are still seen.
    await page.setViewport({ width: 360, height: 740 });
    await page.evaluate(() => scrollTo(0, document.documentElement.scrollHeight));
    const seen = await page.evaluate(() => ["not-saved", "saving"].map((id) => {
      const { top, bottom } = document.getElementById(id).getBoundingClientRect();
      return [id, scrollY > 1000 && top >= 0 && bottom <= innerHeight + 1];
    }));
    assert.deepEqual(seen, [["not-saved", true], ["saving", true]]);
    await page.setViewport({ width: 768, height: 900 });

    // It stays, wherever the person goes and whatever else is saved meanwhile.
    await go_tab(page, "look");
    await failed(page);
    await page.evaluate(() => { window.aborting = false; });
    await fill(page, "target", "1.4");
    await page.keyboard.press("Enter");
    await until(page, () => document.getElementById("target-note").querySelector(".unsaved") === null);
    await failed(page);
    await press(page, "button", "Try again");
    await until(page, () => document.getElementById("not-saved") === null && /Saved at/.test(document.getElementById("saving").innerText));
    await page.reload();
    await until(page, () => /^1\.4( ×)?$/.test(document.getElementById("target")?.value));
    await go_tab(page, "base");
    assert.equal(await value_of(page, "girth"), "58 cm");
    assert.equal(await page.evaluate(() => document.getElementById("girth-note").querySelector(".unsaved")), null);
  });

  check("where starting a wig fails, trying again starts it once and goes there", async (given) => {
    const { page } = await started(given, { first: [abort_writes], hash: "#/start" });
    await page.evaluate(() => { window.aborting = true; });
    await fill(page, "start-name", "Sexton");
    await press(page, "button", "Start");
    await failed(page);
    assert.equal(await value_of(page, "start-name"), "Sexton");
    await page.evaluate(() => { window.aborting = false; });
    await press(page, "button", "Try again");
    await until(page, () => document.getElementById("not-saved") === null);
    await until(page, () => /#\/wig\/[0-9a-f]{32}\/cap/.test(location.hash));
    await go(page, "#/start");
    assert.equal(await value_of(page, "start-name"), "", "the answers of a started wig are not asked again");
    await go(page, "#/");
    assert.deepEqual(await own(page), ["Sexton"]);
  });

  check("two tabs see each other's entries", async (given) => {
    const { page, server } = await started(given);
    await start_wig(page, "Miller");
    const other = await open_app(given.browser, server.url);
    assert.deepEqual(await own(other), ["Miller"]);
    await follow(other, "Miller");
    await go_tab(other, "base");
    await go_tab(page, "base");
    await enter(page, "girth", "55");
    await until(other, () => document.getElementById("girth").value === "55 cm");
    await enter(other, "nape_width", "13");
    await until(page, () => document.getElementById("nape_width").value === "13 cm");
  });

  check("what was typed outlives a closed tab, in a figure and in a form", async (given) => {
    const { page, server } = await started(given);
    const wig = await start_wig(page, "Ferryman");
    await go_tab(page, "base");
    await fill(page, "girth", "57,");
    await page.evaluate(() => { location.hash = location.hash.replace("/base", "/record"); });
    await until(page, () => document.getElementById("note-words") !== null);
    await fill(page, "note-words", "half a sen");
    await pick(page, "work-kind", "sew_weft");
    await fill(page, "sew_weft-length", "1");
    await page.close();
    const later = await open_app(given.browser, `${server.url}#/wig/${wig}/record`);
    await until(later, () => document.getElementById("note-words")?.value === "half a sen");
    assert.equal(await value_of(later, "sew_weft-length"), "1");
    await go_tab(later, "base");
    assert.equal(await value_of(later, "girth"), "57,");
    assert.match(await later.evaluate(() => document.getElementById("girth-note").innerText), /not saved yet/);
    await go(later, "#/start");
    await fill(later, "start-name", "Shep");
    await later.close();
    const last = await open_app(given.browser, `${server.url}#/start`);
    await until(last, () => document.getElementById("start-name")?.value === "Shep");
  });

  check("a backup taken in elsewhere brings the same wigs; taken in twice it changes nothing", async (given) => {
    const { page } = await started(given);
    await start_wig(page, "Glazier", { size: "large" });
    await go_tab(page, "look");
    await enter(page, "target", "1.3");
    await go_tab(page, "record");
    const log = await log_of(page);
    await go(page, "#/safe");
    await press(page, "button", "Save a backup");
    const { name, text } = await given.browser.download(/^weftbook-backup-\d{4}-\d\d-\d\d\.json$/);
    assert.match(await until(page, () => /Last backup: \d{4}/.exec(document.querySelector("main").innerText)?.[0]), /\d{4}/);
    const path = join(directory, `${engine}-${name}`);
    await writeFile(path, text);

    // Another server is another origin: a browser that has nothing yet.
    const fresh = (await started(given, { hash: "#/safe" })).page;
    for (const [round, pattern] of [[1, /Glazier.*\(new here\): 5 new, 0 already here/], [2, /Glazier: 0 new, 5 already here, 0 differing/]]) {
      await choose_file(fresh, () => press(fresh, "button", "Choose a file"), path);
      const preview = await until(fresh, () => document.getElementById("preview")?.innerText);
      assert.match(preview, pattern, `round ${round}`);
      await press(fresh, "button", "Take it in");
      await until(fresh, () => /Taken in\. Nothing of yours was replaced/.test(document.querySelector("main").innerText));
      await go(fresh, "#/");
      await until(fresh, () => document.querySelectorAll("ul.wigs > li").length === 4);
      assert.deepEqual(await own(fresh), ["Glazier"]);
      await follow(fresh, "Glazier");
      await go_tab(fresh, "record");
      assert.deepEqual(await log_of(fresh), log);
      await go(fresh, "#/safe");
    }
    await writeFile(path, "a shopping list");
    await choose_file(fresh, () => press(fresh, "button", "Choose a file"), path);
    assert.match(await until(fresh, () => document.querySelector("main .reason")?.innerText), /./);
  });

  check("a fully knotted cap says that it has no wefts", async (given) => {
    const { page } = await started(given);
    await start_wig(page, "Abbess", { cap: "fully_knotted" });
    assert.match(await text_at(page, "no-wefts"), /No wefts on this cap.*knot/);
    await go_tab(page, "weft");
    assert.match((await answer(page)).headline, /No wefts on this cap/);
  });

  check("the demo can be changed, but nothing of it is kept or mixed with own wigs", async (given) => {
    const { page } = await started(given);
    await follow(page, "Copper bob");
    assert.match(await text_of(page), /Demo, invented: change what you like/);
    await go_tab(page, "base");
    const girth = await value_of(page, "girth");
    await enter(page, "girth", "58.5");
    await enter(page, "name", "Mine now");
    await go_tab(page, "record");
    await fill(page, "note-words", "in the demo");
    await press(page, "button", "Record");
    await until(page, () => document.querySelector("ol.log") !== null);
    const rows = await page.evaluate(() => new Promise((resolve, reject) => {
      const opening = indexedDB.open("weftbook");
      opening.onerror = () => reject(opening.error);
      opening.onsuccess = () => {
        const counting = opening.result.transaction("entries").objectStore("entries").count();
        counting.onsuccess = () => {
          opening.result.close();
          resolve(counting.result);
        };
      };
    }));
    assert.equal(rows, 0, "the demo writes nothing");
    // Nor does its file make a second one of it.
    await go(page, "#/safe");
    await choose_file(page, () => press(page, "button", "Choose a file"), DEMO_FILE);
    assert.match(await until(page, () => document.querySelector("main .reason")?.innerText), /demo wig, which is here already/);
    await go(page, "#/lots");
    assert.equal(await page.evaluate(() => document.querySelectorAll(".lot").length), 0, "the demo's wefts are not on the own shelf");
    await go(page, "#/");
    assert.deepEqual(await own(page), []);
    await page.reload();
    await until(page, () => document.querySelector("ul.wigs") !== null);
    assert.deepEqual((await wigs_of(page)).map(({ name }) => name), ["Copper bob", "Storm-grey mane", "Evening dressing, 1890s"]);
    await follow(page, "Copper bob");
    await go_tab(page, "base");
    assert.equal(await value_of(page, "girth"), girth);
  });

  check("where the browser promises nothing, that is said, with a backup and a question to press", async (given) => {
    const refuse = () => {
      window.asked = 0;
      StorageManager.prototype.persisted = async () => false;
      StorageManager.prototype.persist = async () => { window.asked += 1; return window.asked > 1; };
    };
    const { page } = await started(given, { first: [refuse] });
    assert.equal(await page.evaluate(() => document.getElementById("not-persisted")), null, "nothing to lose yet");
    await start_wig(page, "Cooper");
    await go(page, "#/");
    assert.match(await until(page, () => document.getElementById("not-persisted")?.innerText), /may erase.*private window/);
    await press(page, "button", "Save a backup");
    assert.equal(JSON.parse((await given.browser.download(/^weftbook-backup-/)).text).rows.length, 4);
    await press(page, "button", "Ask the browser to keep them");
    await until(page, () => window.asked === 1);
    assert.ok(await page.evaluate(() => document.getElementById("not-persisted").checkVisibility()), "a refusal leaves the banner");
    await press(page, "button", "Ask the browser to keep them");
    await until(page, () => document.getElementById("not-persisted") === null);
    assert.notEqual((await focused(page)).tag, "body", "the focus goes somewhere sensible with the banner gone");
  });

  check("the page talks to nobody, and cannot", async (given) => {
    const blocked = [/Content.Security.Policy|Content-Security-Policy|violates|blocked/i];
    const { page, server } = await started(given, { allow: blocked });
    const asked = [];
    page.on("request", (request) => asked.push(request.url()));
    for (const hash of ["#/start", "#/lots", "#/safe", "#/units", "#/about", "#/"]) await go(page, hash);
    await follow(page, "Copper bob");
    for (const tab of ["base", "look", "weft", "record"]) await go_tab(page, tab);
    await page.reload();
    await until(page, () => document.querySelector("ol.log, .log-empty, #record-log") !== null);
    const home = new URL(server.url).origin;
    assert.ok(asked.length > 3, "requests are seen at all");
    assert.deepEqual(asked.filter((address) => new URL(address).origin !== home && !/^(data|blob):/.test(address)), []);

    const elsewhere = await given.serve(async () => Buffer.from("heard"));
    const tried = await page.evaluate(async (address) => {
      const broken = [];
      document.addEventListener("securitypolicyviolation", (event) => broken.push(event.effectiveDirective));
      const ways = {
        fetch: () => fetch(address, { mode: "no-cors" }).then(() => true, () => false),
        image: () => new Promise((resolve) => {
          const image = new Image();
          image.onload = () => resolve(true);
          image.onerror = () => resolve(false);
          image.src = `${address}dot.png`;
        }),
        beacon: async () => { navigator.sendBeacon(address, "words"); return false; },
        socket: () => new Promise((resolve) => {
          try {
            const socket = new WebSocket(address.replace("http", "ws"));
            socket.onopen = () => resolve(true);
            socket.onerror = () => resolve(false);
          } catch {
            resolve(false);
          }
        }),
      };
      const through = [];
      for (const [name, way] of Object.entries(ways)) if (await way()) through.push(name);
      return { through, broken };
    }, elsewhere.url);
    assert.deepEqual(tried.through, []);
    assert.ok(tried.broken.includes("connect-src") && tried.broken.includes("img-src"), `the policy spoke: ${tried.broken}`);
    assert.deepEqual(elsewhere.requests, [], "nothing arrived there");
  });

  check("the demo's plan is the terminal's plan", async (given) => {
    const program = process.env.WEFTBOOK_CLI;
    assert.ok(program, 'WEFTBOOK_CLI must name the "weftbook" program: cargo build -p cli, then its path');
    const { page } = await started(given);
    const { stdout } = await promisify(execFile)(program, ["plan", DEMO_FILE, "--json", "--today", await today_in(page)]);
    const told = JSON.parse(stdout);
    await follow(page, "Copper bob");
    await go_tab(page, "weft");
    const { headline, facts, rows, proved } = await answer_where(page, (now) => now.rows > 0);
    assert.equal(headline, told.headline);
    assert.equal(facts.Packs, `${told.packs.low} to ${told.packs.high}, likely ${told.packs.likely}`);
    assert.equal(rows, told.rows.length);
    assert.equal(facts["Order by"].slice(0, 10), told.order_by);
    assert.equal(/Cannot be done cheaper/.test(proved), told.proved);
    assert.equal(facts.Costs?.replace(/[^\d]/g, ""), told.cost_hundredths === null ? undefined : String(told.cost_hundredths));
    assert.equal(facts.Buy, told.buy.map(({ lot, packs }) => `${packs} × ${lot}`).join(", "));
  });
});
