// The offline copy: opens with the server gone, offers a new version without taking it, takes it when
// told, clears only its own old files, and never touches the records.

import assert from "node:assert/strict";
import { press, until, until_here } from "./lib/page.mjs";
import { files } from "./lib/server.mjs";
import { in_every_engine } from "./lib/suite.mjs";
import { stand_in } from "./lib/stand_in.mjs";
import { row } from "./lib/rows.mjs";

const one = await stand_in({ version: "one", worker: "on" });
const two = await stand_in({ version: "two", worker: "on" });

// With the server gone, the browser's own check for a new worker cannot reach it, and says so.
const SERVER_GONE = [/ERR_CONNECTION_REFUSED/, /sw\.js/, /not-listed\.txt/];

async function installed({ browser, serve }, options = {}) {
  const server = await serve(files(one), options);
  const page = await browser.open(server.url, { allow: SERVER_GONE });
  await until(page, () => window.ready);
  await until(page, async () => (await navigator.serviceWorker.getRegistration())?.active?.state === "activated" && navigator.serviceWorker.controller !== null);
  return { page, server };
}

const keys = (page) => page.evaluate(async () => (await caches.keys()).sort());
const write_row = (page, number) => page.evaluate(async (rows) => {
  await window.stand_in.open();
  await window.stand_in.add(rows);
}, JSON.stringify([row(number)]));
const count_rows = (page) => page.evaluate(() => new Promise((resolve, reject) => {
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

/** Puts version two on the server and lets the page find it. */
async function offer(page, server) {
  server.swap(files(two));
  await page.evaluate(async () => (await navigator.serviceWorker.getRegistration()).update());
  await until(page, () => window.told?.includes("waiting"));
}

/** As a person does it with Shift and the reload button: past the worker. */
async function forced_reload(page, engine) {
  if (engine === "chromium") {
    const session = await page.createCDPSession();
    await session.send("Page.reload", { ignoreCache: true });
  } else {
    await page.evaluate(() => { location.reload(true); });
  }
}

in_every_engine("offline copy", ({ check, engine }) => {
  for (const [name, options] of [
    ["from the root", {}],
    ["from a sub-path without headers", { prefix: "/some/sub/path/", headers: "none" }],
    ["from a host that redirects index.html", { prefix: "/wigs/", redirect_index: true }],
  ]) {
    check(`${name}: opens with the server stopped, records and all`, async (given) => {
      const { page, server } = await installed(given, options);
      await write_row(page, 1);
      await server.stop();
      await page.goto(`${server.url}#/wig/1`);
      await page.reload();
      await until(page, () => window.ready);
      assert.equal(await page.evaluate(() => window.build), "app-one");
      assert.equal(await page.evaluate(() => navigator.serviceWorker.controller !== null), true);
      assert.equal(await count_rows(page), 1);
      // In a new tab too, and by the index's own name.
      const other = await given.browser.open(`${server.url}index.html`, { allow: SERVER_GONE });
      await until(other, () => window.ready);
      // The stopped server was really needed: what is not in the list cannot be had.
      assert.equal(await other.evaluate(() => fetch("not-listed.txt").then(() => "had", () => "not had")), "not had");
      await server.start();
    });
  }

  check("a new version is offered and not taken", async (given) => {
    const { page, server } = await installed(given);
    await offer(page, server);
    await page.reload();
    await until(page, () => window.ready);
    assert.equal(await page.evaluate(() => window.build), "app-one", "loading again is not taking");
    await until(page, () => window.told?.includes("waiting"));
    assert.deepEqual(await keys(page), ["weftbook / one", "weftbook / two"]);
  });

  check("a new version is taken when told, once, and old files go while records and strangers stay", async (given) => {
    const { page, server } = await installed(given);
    const other = await given.browser.open(server.url, { allow: SERVER_GONE });
    await until(other, () => window.ready);
    await write_row(page, 1);
    await page.evaluate(async () => {
      await caches.open("weftbook /another/place/ one");
      await caches.open("somebody else");
    });
    await offer(page, server);
    let loads = 0;
    page.on("load", () => { loads += 1; });
    await press(page, "button", "Take update");
    await until(page, () => window.ready && window.build === "app-two");
    await until_here(async () => !(await keys(page)).includes("weftbook / one"), "the old files to go");
    assert.deepEqual(await keys(page), ["somebody else", "weftbook / two", "weftbook /another/place/ one"]);
    assert.equal(await count_rows(page), 1);
    // The other tab is told, and not torn away from what is being typed there.
    await until(other, () => window.told?.includes("taken"));
    assert.equal(await other.evaluate(() => window.build), "app-one");
    await new Promise((later) => setTimeout(later, 300));
    assert.equal(loads, 1, "loaded again once");
    await server.stop();
    await page.reload();
    await until(page, () => window.ready && window.build === "app-two");
    await server.start();
  });

  check("a page loaded past the worker can take a new version too", async (given) => {
    const { page, server } = await installed(given);
    // A second page keeps the old version in use, so that the new one has to wait.
    const other = await given.browser.open(server.url, { allow: SERVER_GONE });
    await until(other, () => window.ready && navigator.serviceWorker.controller !== null);
    await forced_reload(page, engine);
    await until(page, () => window.ready && navigator.serviceWorker.controller === null);
    await offer(page, server);
    await press(page, "button", "Take update");
    await until(page, () => window.ready && window.build === "app-two");
  });

  check("a version of which a file is missing is not offered, and the old one goes on", async (given) => {
    const { page, server } = await installed(given);
    const broken = new Map(two);
    broken.delete("app-two/crash.css");
    server.swap(files(broken));
    await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.getRegistration();
      await new Promise((resolve) => {
        registration.addEventListener("updatefound", () => {
          const worker = registration.installing;
          worker.addEventListener("statechange", () => worker.state === "redundant" && resolve());
        });
        registration.update().catch(() => {});
      });
    });
    assert.deepEqual(await page.evaluate(() => window.told ?? []), []);
    await server.stop();
    await page.reload();
    await until(page, () => window.ready && window.build === "app-one");
    await server.start();
  });

  check("after a crash the newer version can be had", async (given) => {
    const server = await given.serve(files(one));
    const page = await given.browser.open(server.url, { allow: [...SERVER_GONE, /unreachable/] });
    await until(page, () => window.ready);
    await until(page, () => navigator.serviceWorker.controller !== null);
    await offer(page, server);
    await press(page, "button", "Panic");
    await press(page, "button", "Open again with the newer version");
    await until(page, () => window.ready && window.build === "app-two");
  });

  check("switched off, no worker is registered", async ({ browser, serve }) => {
    const server = await serve(files(await stand_in({ worker: "off" })));
    const page = await browser.open(server.url);
    await until(page, () => window.ready);
    await page.evaluate(() => new Promise((later) => setTimeout(later, 200)));
    assert.equal(await page.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length), 0);
  });
});
