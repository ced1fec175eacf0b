// Starts the app: fetches and compiles its WebAssembly, lets it take the page, then installs the
// offline copy. Whatever goes wrong before the app runs ends on the crash screen, not on a blank page.

import { crash } from "./crash.js";
import { gated } from "./halt.js";

const WASM = new URL("./weftbook_bg.wasm", import.meta.url);
const WORKER = new URL("../sw.js", import.meta.url);

let started = false;

function words(cause) {
  if (!(cause instanceof Error)) return String(cause);
  const stack = cause.stack ?? "";
  return stack.includes(cause.message) ? stack : `${cause.name}: ${cause.message}\n${stack}`;
}

/** Did this come out of the app's WebAssembly, and not from an extension or the page's own plain code? */
function from_wasm(cause) {
  return cause instanceof WebAssembly.RuntimeError || /wasm-function|wasm:\/\//.test(cause?.stack ?? "");
}

function watch_errors() {
  window.addEventListener("error", (event) => {
    if (event.error && (!started || from_wasm(event.error))) crash(words(event.error));
  });
  window.addEventListener("unhandledrejection", (event) => {
    if (!started || from_wasm(event.reason)) crash(words(event.reason));
  });
}

async function compile(address) {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address.pathname} could not be fetched: the server answered ${response.status}.`);
  // Streaming needs the server to give the right type; many simple servers do not, and that is fine.
  const typed = /^application\/wasm\s*(;|$)/i.test(response.headers.get("content-type") ?? "");
  if (typed && WebAssembly.compileStreaming) return WebAssembly.compileStreaming(response);
  return WebAssembly.compile(await response.arrayBuffer());
}

/** Runs wasm-bindgen's `init` so that the instance it gets is behind the gate of halt.js. Its generated
 *  code has no hook for that, so the one call it makes is met on the way. */
async function start(init, module) {
  const plain = WebAssembly.instantiate;
  WebAssembly.instantiate = async (source, imports) => {
    WebAssembly.instantiate = plain;
    const instance = await plain.call(WebAssembly, source, imports);
    return { module: source, instance: { exports: gated(instance.exports) } };
  };
  try {
    await init({ module_or_path: module });
  } finally {
    WebAssembly.instantiate = plain;
  }
}

function install_offline_copy() {
  if (document.documentElement.dataset.serviceWorker !== "on" || !navigator.serviceWorker) return;
  navigator.serviceWorker.register(WORKER, { updateViaCache: "none" }).catch((cause) => {
    // Not fatal: the app runs, it only will not open without a network.
    console.warn(`Weftbook is not available offline: ${cause.message}`);
  });
}

async function boot() {
  if (typeof WebAssembly === "undefined") {
    throw new Error("This browser has WebAssembly switched off or is too old for it. Weftbook needs it; try another browser.");
  }
  const [glue, module] = await Promise.all([import("./weftbook.js"), compile(WASM)]);
  await start(glue.default, module);
  started = true;
}

// From a disk most browsers never get here; early.js has already said that a server is needed.
if (location.protocol !== "file:") {
  watch_errors();
  boot().catch((cause) => crash(`Weftbook could not be started.\n${words(cause)}`)).finally(install_offline_copy);
}
