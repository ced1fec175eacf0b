// Starting the two engines, and pages that fail a test on any error nobody allowed.

import { mkdtemp, readFile, readdir, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import puppeteer from "puppeteer-core";

const PROGRAMS = {
  chromium: process.env.WEFTBOOK_CHROMIUM ?? "/usr/bin/chromium",
  firefox: process.env.WEFTBOOK_FIREFOX ?? "/usr/bin/firefox-esr",
};

/** The engines to test in; WEFTBOOK_ENGINES=chromium leaves the other out. */
export const ENGINES = (process.env.WEFTBOOK_ENGINES ?? "chromium,firefox").split(",");

const CHROMIUM_ARGUMENTS = [
  // The tests may run as root in a container, where the sandbox cannot start.
  "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
  "--disable-background-networking", "--disable-component-update", "--disable-sync",
];

const firefox_preferences = (downloads, dark) => ({
  "browser.download.folderList": 2,
  "browser.download.dir": downloads,
  "browser.download.useDownloadDir": true,
  "browser.download.always_ask_before_handling_new_types": false,
  "browser.download.alwaysOpenPanel": false,
  "browser.helperApps.neverAsk.saveToDisk": "application/json,text/plain,text/csv,text/html",
  // 0 is dark, 1 is light; BiDi has no command for it.
  "layout.css.prefers-color-scheme.content-override": dark ? 0 : 1,
});

/** Starts an engine. `profile`: a folder to keep between starts, else a fresh one that is removed.
 *  `preferences`: more for Firefox. Returns `{engine, open, download, close}`. */
export async function launch(engine, { profile = null, dark = false, preferences = {} } = {}) {
  const scratch = await mkdtemp(join(tmpdir(), `weftbook-${engine}-`));
  const downloads = join(scratch, "downloads");
  const common = {
    executablePath: PROGRAMS[engine],
    headless: true,
    userDataDir: profile ?? join(scratch, "profile"),
    defaultViewport: { width: 768, height: 900 },
  };
  const browser = engine === "chromium"
    ? await puppeteer.launch({ ...common, browser: "chrome", args: CHROMIUM_ARGUMENTS, downloadBehavior: { policy: "allow", downloadPath: downloads } })
    : await puppeteer.launch({ ...common, browser: "firefox", extraPrefsFirefox: { ...firefox_preferences(downloads, dark), ...preferences } });

  const pages = [];

  return {
    engine,
    browser,

    /** A new tab. `allow`: patterns of errors this test expects; every other one fails `quiet`. */
    async open(url, { allow = [] } = {}) {
      const page = await browser.newPage();
      const errors = [];
      const note = (text) => allow.some((pattern) => pattern.test(text)) || errors.push(text);
      page.on("pageerror", (error) => note(`page error: ${error?.message ?? error}`));
      page.on("console", (message) => message.type() === "error" && note(`console: ${message.text()} ${message.location()?.url ?? ""}`));
      if (dark && engine === "chromium") await page.emulateMediaFeatures([{ name: "prefers-color-scheme", value: "dark" }]);
      pages.push(page);
      page.weftbook_errors = errors;
      if (url) await page.goto(url);
      return page;
    },

    /** Fails on any error that an open page has shown. Call it at the end of every test. */
    quiet() {
      const errors = pages.flatMap((page) => page.weftbook_errors);
      if (errors.length > 0) throw new Error(`the page showed errors:\n${errors.join("\n")}`);
    },

    /** Closes every tab, so that the next test starts with none. */
    async clear() {
      for (const page of pages.splice(0)) await page.close().catch(() => {});
    },

    /** Waits for a finished download whose name matches, and returns `{name, text}`. */
    async download(pattern, patience_ms = 20_000) {
      const give_up = Date.now() + patience_ms;
      while (Date.now() < give_up) {
        const names = await readdir(downloads).catch(() => []);
        const name = names.find((each) => pattern.test(each) && !/\.(part|crdownload)$/.test(each));
        if (name && !names.includes(`${name}.part`)) {
          const text = await readFile(join(downloads, name), "utf8");
          if (text.length > 0) {
            await rm(join(downloads, name));
            return { name, text };
          }
        }
        await new Promise((later) => setTimeout(later, 50));
      }
      throw new Error(`no download like ${pattern} arrived; there are: ${await readdir(downloads).catch(() => "none")}`);
    },

    async close() {
      await browser.close();
      await rm(scratch, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}
