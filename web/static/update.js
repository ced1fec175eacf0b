// A new version of the app: noticed, offered, and taken only when the person says so.

import { has_crashed } from "./halt.js";

const CHECK_EVERY_MS = 60 * 60 * 1000;

let reloading = false;

async function registration() {
  try {
    return (await navigator.serviceWorker?.getRegistration()) ?? null;
  } catch {
    // Private windows of some browsers refuse the question; then there is no worker either.
    return null;
  }
}

/** True where the app will open without a network the next time. */
export async function offline_ready() {
  return Boolean((await registration())?.active);
}

/** True where a newer version is fetched and waits to be taken. */
export async function update_waiting() {
  return Boolean((await registration())?.waiting);
}

/** Calls back with "waiting" when a newer version can be taken, and with "taken" when another tab took
 *  it and this one still runs the old one. Returns a function that stops it. */
export function watch_update(callback) {
  const workers = navigator.serviceWorker;
  if (!workers) return () => {};
  let stopped = false;
  let told = null;
  const tell = (what) => {
    if (stopped || reloading || has_crashed() || told === what) return;
    told = what;
    callback(what);
  };
  // A page that no worker served is claimed by the first one; that is no news.
  let controlled = Boolean(workers.controller);
  const on_controller = () => {
    if (controlled) tell("taken");
    controlled = true;
  };
  workers.addEventListener("controllerchange", on_controller);

  let checked = Date.now();
  let registered = null;
  const on_visible = () => {
    if (document.visibilityState !== "visible" || Date.now() - checked < CHECK_EVERY_MS) return;
    checked = Date.now();
    // Without a network the check fails, and there is nothing to tell.
    registered?.update().catch(() => {});
  };
  document.addEventListener("visibilitychange", on_visible);

  const follow = (worker) => {
    worker?.addEventListener("statechange", () => {
      if (worker.state === "installed" && registered.active) tell("waiting");
    });
  };
  // `ready` waits for the registration that boot.js makes after the app has started.
  workers.ready.then((found) => {
    if (stopped) return;
    registered = found;
    if (found.waiting) tell("waiting");
    follow(found.installing);
    found.addEventListener("updatefound", () => follow(found.installing));
  });

  return () => {
    stopped = true;
    workers.removeEventListener("controllerchange", on_controller);
    document.removeEventListener("visibilitychange", on_visible);
  };
}

/** Takes the waiting version and loads the page again, once, under the new worker. Save first.
 *  Resolves to false where nothing waits; otherwise the page goes. */
export async function take_update() {
  const worker = (await registration())?.waiting;
  if (!worker) return false;
  const reload = () => {
    if (reloading) return;
    reloading = true;
    location.reload();
  };
  navigator.serviceWorker.addEventListener("controllerchange", reload);
  // A page loaded past the worker (forced reload) has no controller that could change.
  worker.addEventListener("statechange", () => worker.state === "activated" && reload());
  worker.postMessage({ take: true });
  return true;
}
