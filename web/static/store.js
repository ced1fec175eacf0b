// The records kept in this browser: what the app and the crash screen call. Rows are only ever
// added, so two tabs cannot overwrite each other. Knows no rule of the trade: the core reads rows.
//
// Texts across the border are JSON. Every promise settles after the transaction has ended; see
// store_base.js for the errors and texts.js for a row's stable text.

import { announce, reading, answer, store_error, StoreError, writing } from "./store_base.js";
import { sha256 as digest_of, stable } from "./texts.js";

export { open, subscribe } from "./store_base.js";
export { backup_file, backup_text } from "./store_backup.js";

const HEX_32 = /^[0-9a-f]{32}$/;
const HEX_64 = /^[0-9a-f]{64}$/;

// Far beyond any real record, and far enough below 2^53 that a borrowed clock never runs out of
// exact integers.
const LAMPORT_MAX = 2 ** 52;

function refuse(field, value, remedy) {
  return new StoreError("other", `${field} is ${JSON.stringify(value) ?? "missing"}: ${remedy}`, `field ${field}`);
}

function parse_list(text, what) {
  let list;
  try {
    list = JSON.parse(text);
  } catch (cause) {
    throw new StoreError("other", `${what} cannot be read as JSON; nothing was stored.`, String(cause));
  }
  if (!Array.isArray(list)) throw refuse(what, list, "give a list");
  return list;
}

function check_row(row, index, lamport_given) {
  const at = (field) => `rows[${index}].${field}`;
  if (row === null || typeof row !== "object") throw refuse(`rows[${index}]`, row, "give an object");
  if (!HEX_32.test(row.id)) throw refuse(at("id"), row.id, "give 32 hex digits in lower case");
  if (row.log !== "workshop" && !HEX_32.test(row.log)) {
    throw refuse(at("log"), row.log, 'give the wig\'s 32 hex digits or "workshop"');
  }
  if (lamport_given && !(Number.isSafeInteger(row.lamport) && row.lamport >= 0 && row.lamport <= LAMPORT_MAX)) {
    throw refuse(at("lamport"), row.lamport, `give a whole number from 0 to ${LAMPORT_MAX}`);
  }
}

async function highest_lamport(transaction) {
  let highest = 0;
  for (const name of ["entries", "clashes"]) {
    const cursor = await answer(transaction.objectStore(name).index("lamport").openKeyCursor(null, "prev"));
    if (cursor) highest = Math.max(highest, cursor.key);
  }
  return highest;
}

function announce_rows(rows) {
  const ids_by_log = new Map();
  for (const { log, id } of rows) ids_by_log.set(log, [...(ids_by_log.get(log) ?? []), id]);
  for (const [log, ids] of ids_by_log) announce({ event: "rows", log, ids });
}

/** Adds this tab's own new rows, all or none. Each gets the next lamport, allocated inside the same
 *  transaction, whatever the caller put there. Resolves to the rows as stored. */
export async function add(rows_json) {
  const given = parse_list(rows_json, "rows");
  given.forEach((row, index) => check_row(row, index, false));
  const stored = await writing(["entries", "clashes"], async (transaction) => {
    let lamport = await highest_lamport(transaction);
    if (lamport + given.length > Number.MAX_SAFE_INTEGER) throw refuse("lamport", lamport, "the record's clock is used up");
    const entries = transaction.objectStore("entries");
    const rows = given.map((row) => ({ ...row, lamport: (lamport += 1) }));
    await Promise.all(rows.map((row) => answer(entries.add(row))));
    return rows;
  });
  announce_rows(stored);
  return JSON.stringify(stored);
}

/** Takes in rows from a file: union by id in one transaction. They keep their lamport. The same row
 *  again is skipped; the same id with other bytes is kept beside the first, as a clash.
 *  Resolves to `{"added":n,"same":n,"clashes":n}`. */
export async function take_in(rows_json) {
  const given = parse_list(rows_json, "rows");
  given.forEach((row, index) => check_row(row, index, true));
  const counts = { added: 0, same: 0, clashes: 0 };
  const news = [];
  await writing(["entries", "clashes"], async (transaction) => {
    const entries = transaction.objectStore("entries");
    const clashes = transaction.objectStore("clashes");
    const texts = given.map(stable);
    const [standing, clashing] = await Promise.all([
      Promise.all(given.map((row) => answer(entries.get(row.id)))),
      Promise.all(texts.map((text) => answer(clashes.getKey(text)))),
    ]);
    const text_by_id = new Map();
    standing.forEach((row) => row && text_by_id.set(row.id, stable(row)));
    const clash_texts = new Set(clashing.filter((key) => key !== undefined));
    const writes = [];
    given.forEach((row, index) => {
      const text = texts[index];
      const known = text_by_id.get(row.id);
      if (known === text || clash_texts.has(text)) {
        counts.same += 1;
        return;
      }
      if (known === undefined) {
        text_by_id.set(row.id, text);
        writes.push(answer(entries.add(row)));
        counts.added += 1;
      } else {
        clash_texts.add(text);
        writes.push(answer(clashes.add(row, text)));
        counts.clashes += 1;
      }
      news.push(row);
    });
    await Promise.all(writes);
  });
  announce_rows(news);
  return JSON.stringify(counts);
}

/** Every row: `{"rows":[…],"clashes":[…]}`. */
export function all() {
  return reading(["entries", "clashes"], async (transaction) => {
    const [rows, clashes] = await Promise.all(
      ["entries", "clashes"].map((name) => answer(transaction.objectStore(name).getAll())),
    );
    return JSON.stringify({ rows, clashes });
  });
}

/** The rows of one log, in the same shape as `all`. */
export function by_log(log) {
  return reading(["entries", "clashes"], async (transaction) => {
    const [rows, clashes] = await Promise.all(
      ["entries", "clashes"].map((name) => answer(transaction.objectStore(name).index("log").getAll(log))),
    );
    return JSON.stringify({ rows, clashes });
  });
}

// ---- people ----------------------------------------------------------------------------------

function parse_people(text) {
  const people = parse_list(text, "people");
  people.forEach((person, index) => {
    if (!HEX_32.test(person?.id)) throw refuse(`people[${index}].id`, person?.id, "give 32 hex digits in lower case");
  });
  return people;
}

/** What stands after `next` meets `standing`. A forget mark keeps nothing but the id, and wins every
 *  time; otherwise `replace` says whether a person already known is written over. */
function person_after(standing, next, replace) {
  if (standing?.forgotten || next.forgotten) return { id: next.id, forgotten: true };
  return standing && !replace ? standing : next;
}

async function write_people(people, replace) {
  const standing = await writing(["people"], async (transaction) => {
    const store = transaction.objectStore("people");
    const result = [];
    for (const person of people) {
      const kept = person_after(await answer(store.get(person.id)), person, replace);
      await answer(store.put(kept));
      result.push(kept);
    }
    return result;
  });
  if (standing.length > 0) announce({ event: "people", ids: standing.map(({ id }) => id) });
  return standing;
}

/** Writes one person (`{"id":…,"name":…}`, or `{"id":…,"forgotten":true}` to forget). Resolves to the
 *  person as it now stands: the forget mark, where one was set before. */
export async function put_person(person_json) {
  const [person] = await write_people(parse_people(`[${person_json}]`), true);
  return JSON.stringify(person);
}

/** Takes in people from a file, in one transaction: unknown ones are added, forget marks win, and a
 *  person known here keeps the words used here. Resolves to the people as they now stand. */
export async function take_in_people(people_json) {
  return JSON.stringify(await write_people(parse_people(people_json), false));
}

/** Everybody, forget marks included, as a JSON list. */
export function get_people() {
  return reading(["people"], async (transaction) =>
    JSON.stringify(await answer(transaction.objectStore("people").getAll())));
}

// ---- photo bytes -----------------------------------------------------------------------------

/** Stores a photo's bytes and thumbnail under the SHA-256 of the bytes. Resolves to "stored", "known"
 *  or "forgotten" (a forgotten photo never comes back). */
export async function put_blob(sha256, bytes, thumb, type) {
  if (!HEX_64.test(sha256)) throw refuse("sha256", sha256, "give 64 hex digits in lower case");
  // Copies: a view into WebAssembly memory may move while we wait.
  const own = { sha256, bytes: new Uint8Array(bytes), thumb: new Uint8Array(thumb), type: String(type) };
  const found = await digest_of(own.bytes);
  if (found !== null && found !== sha256) throw refuse("sha256", sha256, `the photo's bytes have ${found}; choose the photo again`);
  const outcome = await writing(["blobs"], async (transaction) => {
    const store = transaction.objectStore("blobs");
    const standing = await answer(store.get(sha256));
    if (standing) return standing.forgotten ? "forgotten" : "known";
    await answer(store.add(own));
    return "stored";
  });
  if (outcome === "stored") announce({ event: "blobs", ids: [sha256] });
  return outcome;
}

/** Removes a photo's bytes for good and leaves a mark that wins every later import. */
export async function forget_blob(sha256) {
  if (!HEX_64.test(sha256)) throw refuse("sha256", sha256, "give 64 hex digits in lower case");
  await writing(["blobs"], (transaction) => answer(transaction.objectStore("blobs").put({ sha256, forgotten: true })));
  announce({ event: "blobs", ids: [sha256] });
}

/** `{bytes, thumb, type}` or null where the photo is not on this device (or was forgotten). */
export function get_blob(sha256) {
  return reading(["blobs"], async (transaction) => {
    const row = await answer(transaction.objectStore("blobs").get(sha256));
    return row && !row.forgotten ? { bytes: row.bytes, thumb: row.thumb, type: row.type } : null;
  });
}

/** What photos are here: a JSON list of `{"sha256":…,"type":…,"size":n}` or `{"sha256":…,"forgotten":true}`. */
export function list_blobs() {
  return reading(["blobs"], async (transaction) => {
    const store = transaction.objectStore("blobs");
    const list = [];
    // One at a time: a workshop's photos together may not fit into memory.
    for (const sha256 of await answer(store.getAllKeys())) {
      const row = await answer(store.get(sha256));
      list.push(row.forgotten ? { sha256, forgotten: true } : { sha256, type: row.type, size: row.bytes.length });
    }
    return JSON.stringify(list);
  });
}

// ---- odds and ends ---------------------------------------------------------------------------

/** Keeps a text under a name (not part of a backup). */
export async function put_meta(name, value) {
  await writing(["meta"], (transaction) => answer(transaction.objectStore("meta").put({ name, value: String(value) })));
  announce({ event: "meta", ids: [name] });
}

/** The text kept under a name, or null. */
export function get_meta(name) {
  return reading(["meta"], async (transaction) =>
    (await answer(transaction.objectStore("meta").get(name)))?.value ?? null);
}

/** An error's parts as JSON text, for callers that cannot look into an object. */
export function describe_error(cause) {
  const { kind, message, detail } = store_error(cause);
  return JSON.stringify({ kind, message, detail });
}
