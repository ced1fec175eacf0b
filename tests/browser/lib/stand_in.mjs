// A folder like the built one, from web/static itself with a stand-in for the compiled app: so the
// shell is tested without waiting for Rust, and a "new version" is one call away.

import { readFile, readdir } from "node:fs/promises";

const STATIC = new URL("../../../web/static/", import.meta.url);
const STAND_IN = new URL("../stand-in/", import.meta.url);
// What the build puts on top; everything else goes into the app's folder.
const on_top = (name) => ["index.html", "sw.js", "manifest.webmanifest"].includes(name) || name.startsWith("icon");

// (module (import "app" "hit" (func)) (import "app" "panicked" (func))
//   (func (export "enter") call 0) (func (export "boom") call 1 unreachable))
const WASM = Buffer.from([
  0x00, 0x61, 0x73, 0x6d, 1, 0, 0, 0,
  1, 4, 1, 0x60, 0, 0,
  2, 26, 2, 3, ...Buffer.from("app"), 3, ...Buffer.from("hit"), 0, 0, 3, ...Buffer.from("app"), 8, ...Buffer.from("panicked"), 0, 0,
  3, 3, 2, 0, 0,
  7, 16, 2, 5, ...Buffer.from("enter"), 0, 2, 4, ...Buffer.from("boom"), 0, 3,
  10, 12, 2, 4, 0, 0x10, 0, 0x0b, 5, 0, 0x10, 1, 0, 0x0b,
]);

/** A Map from relative path to bytes. `version` names the build; `worker` is "on" or "off". */
export async function stand_in({ version = "one", worker = "off" } = {}) {
  const app = `app-${version}`;
  const built = new Map();
  for (const name of await readdir(STATIC)) {
    const bytes = await readFile(new URL(name, STATIC));
    built.set(on_top(name) ? name : `${app}/${name}`, bytes);
  }
  built.set(`${app}/weftbook.js`, await readFile(new URL("weftbook.js", STAND_IN)));
  built.set(`${app}/weftbook_bg.wasm`, WASM);
  if (!built.has(`${app}/style.css`)) built.set(`${app}/style.css`, "");
  if (!built.has(`${app}/drawing.css`)) built.set(`${app}/drawing.css`, "");
  const listed = [...built.keys()].filter((name) => name !== "sw.js");
  fill(built, "index.html", { app, service_worker: worker });
  fill(built, "sw.js", { version, files: JSON.stringify(listed) });
  return built;
}

function fill(built, name, values) {
  let text = built.get(name).toString("utf8");
  for (const [key, value] of Object.entries(values)) text = text.replaceAll(`{{${key}}}`, value);
  built.set(name, text);
}

/** A page that has nothing but the store on it, under the app's own policy. */
export async function store_page() {
  const built = await stand_in();
  const policy = /<meta http-equiv="Content-Security-Policy"[^>]*>/.exec(built.get("index.html"))[0];
  built.set("app-one/probe.js", await readFile(new URL("probe.js", STAND_IN)));
  built.set("index.html", `<!doctype html><html lang="en-GB"><head><meta charset="utf-8">${policy}<link rel="icon" href="icon.svg"><title>store</title>` +
    '<script type="module" src="app-one/probe.js"></script></head><body><h1>store</h1></body></html>');
  return built;
}
