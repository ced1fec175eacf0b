// Stands in for what wasm-bindgen generates: the same way of being started, three buttons instead of an app.

import { crash } from "./crash.js";
import { add, open } from "./store.js";
import { take_update, watch_update } from "./shell.js";

let wasm;

export default async function init({ module_or_path }) {
  window.hits = 0;
  const imports = { app: { hit: () => { window.hits += 1; }, panicked: () => crash("panicked at 'a stand-in panic', stand-in:1") } };
  const instance = await WebAssembly.instantiate(module_or_path, imports);
  wasm = (instance instanceof WebAssembly.Instance ? instance : instance.instance).exports;

  const root = document.getElementById("app");
  root.replaceChildren();
  const button = (text, act) => {
    const made = document.createElement("button");
    made.textContent = text;
    made.addEventListener("click", act);
    root.append(made);
  };
  button("Enter", () => wasm.enter());
  button("Panic", () => wasm.boom());
  button("Take update", () => take_update());
  // A timer, a chain of promises and a key handler, as an app has them.
  setInterval(() => wasm.enter(), 20);
  const again = () => new Promise((later) => setTimeout(later, 20)).then(() => wasm.enter()).then(again);
  again();
  window.addEventListener("keydown", () => wasm.enter());
  watch_update((what) => {
    window.told = [...(window.told ?? []), what];
  });
  window.stand_in = { open, add };
  window.build = new URL(".", import.meta.url).pathname.split("/").at(-2);
  window.ready = true;
}
