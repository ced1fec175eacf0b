// What the app asks of the browser besides storage: files in and out, the clock, random ids, leaving
// the page, focus, and taking a new version. Plain functions with texts, called from Rust.

import { has_crashed } from "./halt.js";

// ---- clock and chance ------------------------------------------------------------------------

const two = (number) => String(number).padStart(2, "0");

/** The local civil minute, "2026-11-25T09:30". */
export function now_local_minute() {
  const now = new Date();
  const date = [String(now.getFullYear()).padStart(4, "0"), two(now.getMonth() + 1), two(now.getDate())].join("-");
  return `${date}T${two(now.getHours())}:${two(now.getMinutes())}`;
}

/** The time in UTC to the second, "2026-11-25T09:31:02Z". */
export function now_utc() {
  return `${new Date().toISOString().slice(0, 19)}Z`;
}

/** 16 random bytes as 32 hex digits. */
export function random_id() {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

// ---- will the browser keep the records? ------------------------------------------------------

/** "yes", "no" or "unknown": has the browser promised not to clear the records by itself? */
export async function persisted() {
  try {
    return navigator.storage?.persisted ? ((await navigator.storage.persisted()) ? "yes" : "no") : "unknown";
  } catch {
    return "unknown";
  }
}

/** Asks the browser for that promise (some ask the person); answers as `persisted` does. */
export async function persist() {
  try {
    return navigator.storage?.persist ? ((await navigator.storage.persist()) ? "yes" : "no") : "unknown";
  } catch {
    return "unknown";
  }
}

// ---- files -----------------------------------------------------------------------------------

/** Hands a Blob to the browser as a download. The browser does not tell whether it was kept. */
export function download_file(name, file) {
  const address = URL.createObjectURL(file);
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // Long enough for a slow disk or a "where to?" question to start reading.
  setTimeout(() => URL.revokeObjectURL(address), 120_000);
}

/** Hands a text to the browser as a download. */
export function download(name, mime, text) {
  download_file(name, new Blob([text], { type: mime }));
}

function file_error(kind, message, detail) {
  return Object.assign(new Error(message), { kind, detail });
}

/** Lets the person choose one text file of at most `max_bytes`. Resolves to `{name, text}`, or null
 *  when they choose none; rejects with kind "size", "encoding" or "unreadable". To be called from a click. */
export function pick_text_file(accept, max_bytes) {
  return new Promise((resolve, reject) => {
    const input = document.createElement("input");
    input.type = "file";
    input.accept = accept;
    input.addEventListener("cancel", () => resolve(null));
    input.addEventListener("change", () => {
      const file = input.files?.[0];
      if (file) read_text(file, max_bytes).then(resolve, reject);
      else resolve(null);
    });
    input.click();
  });
}

async function read_text(file, max_bytes) {
  if (file.size > max_bytes) {
    throw file_error("size", `${file.name} has ${file.size} bytes; a file for this place has at most ${max_bytes}. Choose the file that Weftbook wrote.`, "");
  }
  let bytes;
  try {
    bytes = await file.arrayBuffer();
  } catch (cause) {
    throw file_error("unreadable", `${file.name} cannot be read. Check that it is still there, then choose it again.`, String(cause));
  }
  try {
    return { name: file.name, text: new TextDecoder("utf-8", { fatal: true }).decode(bytes) };
  } catch (cause) {
    throw file_error("encoding", `${file.name} is not a text file in UTF-8. Choose the file that Weftbook wrote.`, String(cause));
  }
}

// ---- the page --------------------------------------------------------------------------------

/** Calls back when the page may be about to go. Phones often send only the first of the two signs, so
 *  a caller may hear it twice. Returns a function that stops it. */
export function on_hide(callback) {
  const hidden = () => document.visibilityState === "hidden" && !has_crashed() && callback();
  const leaving = () => !has_crashed() && callback();
  document.addEventListener("visibilitychange", hidden);
  window.addEventListener("pagehide", leaving);
  return () => {
    document.removeEventListener("visibilitychange", hidden);
    window.removeEventListener("pagehide", leaving);
  };
}

/** Moves the focus to an element, also one that is not in the tab order. False where there is none. */
export function focus_id(id) {
  const element = document.getElementById(id);
  if (!element) return false;
  element.focus();
  if (document.activeElement !== element) {
    element.tabIndex = -1;
    element.focus();
  }
  return document.activeElement === element;
}

export { offline_ready, take_update, watch_update } from "./update.js";
