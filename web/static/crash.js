// The crash screen: plain JavaScript and no WebAssembly. It takes the page over, says what happened,
// and can save every record from here. Called from the app's panic hook and from boot.js.

import { halt } from "./halt.js";
import { download_file, now_utc } from "./shell.js";
import { backup_file } from "./store.js";
import { take_update, update_waiting } from "./update.js";

// The folder's name tells which build crashed.
const BUILD = new URL(".", import.meta.url).pathname.split("/").at(-2) ?? "";

function element(name, attributes = {}, ...content) {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  made.append(...content);
  return made;
}

function button(text, act) {
  const made = element("button", { type: "button" }, text);
  made.addEventListener("click", act);
  return made;
}

function count(number, one, many) {
  return `${number} ${number === 1 ? one : many}`;
}

async function save(status, pressed) {
  pressed.disabled = true;
  status.textContent = "Reading the records…";
  const now = now_utc();
  const name = `weftbook-records-${now.slice(0, 19).replaceAll(":", "")}.json`;
  try {
    const { file, counts } = await backup_file(`Weftbook crash screen, ${BUILD}`, now);
    download_file(name, file);
    const unread = counts.unread > 0 ? ` ${count(counts.unread, "row", "rows")} could not be read and are named in the file.` : "";
    status.textContent = `Handed to the browser as ${name}: ${count(counts.rows + counts.clashes, "entry", "entries")}, ` +
      `${count(counts.people, "person", "people")}, ${count(counts.blobs, "photo", "photos")}.${unread} Check that the file is among your downloads.`;
  } catch (cause) {
    status.textContent = `The records could not be read: ${cause.message} (${cause.detail ?? cause}) They are still where they were; ` +
      "close the other Weftbook tabs and try again.";
  } finally {
    pressed.disabled = false;
    pressed.focus();
  }
}

function screen(message) {
  const heading = element("h1", { id: "crash-heading", tabindex: "-1" }, "Weftbook has stopped");
  const status = element("p", { role: "status", class: "crash-status" });
  const save_button = button("Save all raw records to a file", () => save(status, save_button));
  const box = element("textarea", { id: "crash-text", readonly: "", rows: "8", spellcheck: "false" });
  box.value = message;
  const choices = element("p", { class: "crash-choices" }, button("Open again", () => location.reload()));
  if (location.hash.length > 1) {
    choices.append(button("Open again at the list of wigs", () => {
      history.replaceState(null, "", location.pathname + location.search);
      location.reload();
    }));
  }
  update_waiting().then((waiting) => {
    if (waiting) choices.append(button("Open again with the newer version", () => take_update()));
  });
  return [element("main", { class: "crash", "aria-labelledby": "crash-heading" },
    heading,
    element("p", {}, "Something went wrong inside the program, and it has stopped so that it cannot do harm."),
    element("p", {}, "What was saved before is still in this browser on this device; nothing of it was removed. " +
      "What you typed last and had not saved may be lost."),
    element("h2", {}, "First, if the records matter to you"),
    element("p", {}, "Save them to a file. Weftbook can take the file in again later."),
    element("p", { class: "crash-choices" }, save_button),
    status,
    element("h2", {}, "Then"),
    choices,
    element("h2", {}, "What the program said"),
    element("p", {}, element("label", { for: "crash-text" }, "For whoever mends it; copy it if you like. It may contain words from your records.")),
    box,
  ), heading];
}

/** Stops the app for good and shows the crash screen in its place. Later calls add their text to it. */
export function crash(message) {
  const text = String(message);
  if (!halt()) {
    const box = document.getElementById("crash-text");
    if (box && !box.value.includes(text)) box.value += `\n\n${text}`;
    return;
  }
  const [main, heading] = screen(`${text}\n\n${BUILD}\n${navigator.userAgent}\n${now_utc()}`);
  // Taking the app's root out also takes out every listener that hangs on it.
  document.body.replaceChildren(main);
  document.title = "Weftbook has stopped";
  heading.focus();
}
