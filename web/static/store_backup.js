// The backup file: everything in the database as one JSON text. Written by the app and by the crash
// screen through this one file, so that both write the same bytes. Reads any layout, even a newer one.
//
//   {"weftbook":"backup","version":0,"producer":…,"made":…,"sha256":…,"rows":[…],"clashes":[…],
//    "people":[…],"blobs":[{"sha256":…,"type":…,"base64":…,"thumb":…}]}
//
// `sha256` is of the UTF-8 bytes of the list after "rows": exactly as written (each row in its stable
// text, rows by id, no spaces), or null where the page had no way to compute it. Rows that the browser
// could not read are named in a last member, "unread":[{"store":…,"key":…}], which is there only then.

import { answer, look, within } from "./store_base.js";
import { base64, sha256, stable } from "./texts.js";

/** One value, or undefined where the browser cannot read it. */
function get_or_nothing(store, key) {
  return new Promise((resolve) => {
    const request = store.get(key);
    request.onsuccess = () => resolve(request.result);
    request.onerror = (event) => {
      // Keep the transaction alive: one damaged row must not cost the others.
      event.preventDefault();
      event.stopPropagation();
      resolve(undefined);
    };
  });
}

/** Calls `take(value)` for every value of a store, in key order; damaged ones are named in `unread`. */
async function each(store, at_once, unread, take) {
  const keys = await answer(store.getAllKeys());
  for (let start = 0; start < keys.length; start += at_once) {
    const some = keys.slice(start, start + at_once);
    const values = await Promise.all(some.map((key) => get_or_nothing(store, key)));
    values.forEach((value, index) => {
      if (value === undefined) unread.push({ store: store.name, key: some[index] });
      else take(value);
    });
  }
}

function blob_text(row) {
  if (row.forgotten) return stable({ sha256: row.sha256, forgotten: true });
  return stable({ sha256: row.sha256, type: row.type, base64: base64(row.bytes), thumb: base64(row.thumb) });
}

async function read_texts(database) {
  const texts = { entries: [], clashes: [], people: [], blobs: [] };
  const unread = [];
  const names = Object.keys(texts).filter((name) => database?.objectStoreNames.contains(name));
  if (names.length > 0) {
    await within(database, names, "readonly", async (transaction) => {
      for (const name of names) {
        // Photos one at a time: a workshop's photos together may not fit into memory twice.
        const [to_text, at_once] = name === "blobs" ? [blob_text, 1] : [stable, 500];
        await each(transaction.objectStore(name), at_once, unread, (value) => texts[name].push(to_text(value)));
      }
    });
  }
  return { texts, unread };
}

async function parts(producer, now_iso) {
  const { texts, unread } = await look(read_texts);
  const rows = `[${texts.entries.join(",")}]`;
  const hash = await sha256(new TextEncoder().encode(rows));
  const head = { weftbook: "backup", version: 0, producer, made: now_iso, sha256: hash };
  const pieces = [JSON.stringify(head).slice(0, -1), ',"rows":', rows];
  for (const name of ["clashes", "people", "blobs"]) {
    pieces.push(`,"${name}":[`);
    texts[name].forEach((text, index) => pieces.push(index > 0 ? "," : "", text));
    pieces.push("]");
  }
  if (unread.length > 0) pieces.push(',"unread":', JSON.stringify(unread));
  pieces.push("}\n");
  const counts = { rows: texts.entries.length, clashes: texts.clashes.length, people: texts.people.length, blobs: texts.blobs.length, unread: unread.length };
  return { pieces, counts };
}

/** The whole backup as one text. */
export async function backup_text(producer, now_iso) {
  return (await parts(producer, now_iso)).pieces.join("");
}

/** The same bytes as `{file, counts}` with `file` a Blob, for records with photos larger than one text can be. */
export async function backup_file(producer, now_iso) {
  const { pieces, counts } = await parts(producer, now_iso);
  return { file: new Blob(pieces, { type: "application/json" }), counts };
}
