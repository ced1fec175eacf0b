// The database itself: opening it, transactions that settle only once they are committed, and the
// words for what can go wrong. Knows no record: what a row means is store.js's and the core's affair.
//
// Plain JavaScript without dependencies, because the crash screen must be able to read every record
// when the WebAssembly module is dead or never arrived.

export const DATABASE = "weftbook";

// The layout of the database, not the format of a row (a row says its own version in `v`).
const LAYOUT = 1;

export const STORES = ["entries", "clashes", "people", "blobs", "meta"];

// An open that answers nothing at all is reported after this long instead of hanging for ever.
const PATIENCE_MS = 10_000;
const RETRY_AFTER_MS = 200;

/** What every promise of the store rejects with. `kind` is one of: quota, blocked, newer,
 *  unreadable, aborted, closed, other. `message` is for people, `detail` is the browser's own text. */
export class StoreError extends Error {
  constructor(kind, message, detail = "") {
    super(message);
    this.name = "StoreError";
    this.kind = kind;
    this.detail = detail;
  }
}

const MESSAGES = {
  quota: "There is no room left for records in this browser. Nothing was changed. Save a backup file, then free some disk space.",
  blocked: "Another tab holds the records in an older way. Close the other Weftbook tabs, then try again.",
  newer: "The records on this device were written by a newer version of Weftbook. Load the page again to get that version; nothing was changed.",
  unreadable: "The records on this device cannot be read just now. Nothing was changed or removed.",
  aborted: "The browser took the last change back before it was safely stored. Nothing of it was kept; try again.",
  closed: "The browser has closed the records. Load the page again before you go on.",
  other: "The browser refused to store or read records.",
};

// Today's name, the newer class's name (the same), the old Gecko name, a full disk in Gecko, and the
// legacy codes of both families.
const QUOTA_NAMES = new Set(["QuotaExceededError", "NS_ERROR_DOM_QUOTA_REACHED", "NS_ERROR_FILE_NO_DEVICE_SPACE"]);
const QUOTA_CODES = new Set([22, 1014]);

const KIND_BY_NAME = {
  VersionError: "newer",
  AbortError: "aborted",
  InvalidStateError: "closed",
  UnknownError: "unreadable",
  NotReadableError: "unreadable",
  NotFoundError: "unreadable",
  SecurityError: "unreadable",
};

/** Any thrown thing as a StoreError. */
export function store_error(cause) {
  if (cause instanceof StoreError) return cause;
  const name = cause?.name ?? "";
  const detail = cause ? `${name || "Error"}: ${cause.message ?? cause}` : "the browser gave no reason";
  let kind = KIND_BY_NAME[name] ?? "other";
  if (QUOTA_NAMES.has(name) || (QUOTA_CODES.has(cause?.code) && name !== "AbortError")) kind = "quota";
  // A full disk met while opening arrives as an UnknownError in Chromium.
  if (/full disk|disk full|quota/i.test(cause?.message ?? "")) kind = "quota";
  return new StoreError(kind, MESSAGES[kind], detail);
}

export function error_of(kind, detail) {
  return new StoreError(kind, MESSAGES[kind], detail);
}

// ---- telling others --------------------------------------------------------------------------

const listeners = new Set();
let channel = null;

function hear(event) {
  const text = JSON.stringify(event);
  for (const listener of [...listeners]) {
    try {
      listener(text);
    } catch (cause) {
      // One listener's fault is shown as such, and not taken for a failure of the store.
      reportError(cause);
    }
  }
}

function open_channel() {
  if (channel || typeof BroadcastChannel === "undefined") return;
  channel = new BroadcastChannel(DATABASE);
  channel.onmessage = (message) => hear(message.data);
}

/** Tells the other tabs. Only to be called after the commit: whoever hears it will read at once. */
export function announce(event) {
  open_channel();
  channel?.postMessage(event);
}

/** Calls back with a JSON text: `{"event":"rows","log":…,"ids":[…]}`, `{"event":"people","ids":[…]}`,
 *  `{"event":"blobs","ids":[…]}` or `{"event":"meta","ids":[…]}` when another tab has committed;
 *  `{"event":"closed","detail":…}` when this tab has lost the database. Returns a function that stops it. */
export function subscribe(callback) {
  open_channel();
  listeners.add(callback);
  return () => listeners.delete(callback);
}

// ---- opening ---------------------------------------------------------------------------------

let connection = null;
let opening_now = null;

function build(database) {
  const rows = (name, options) => {
    const store = database.createObjectStore(name, options);
    store.createIndex("log", "log");
    store.createIndex("lamport", "lamport");
  };
  rows("entries", { keyPath: "id" });
  rows("clashes");
  database.createObjectStore("people", { keyPath: "id" });
  database.createObjectStore("blobs", { keyPath: "sha256" });
  database.createObjectStore("meta", { keyPath: "name" });
}

function keep(database) {
  connection = database;
  const lose = (detail) => {
    if (connection === database) connection = null;
    hear({ event: "closed", detail });
  };
  database.onversionchange = () => {
    // Give way, so that neither a newer tab nor "clear site data" has to wait for this one.
    database.close();
    lose("another tab needs the records to itself, perhaps a newer version of Weftbook");
  };
  database.onclose = () => lose("the browser closed the records, perhaps because site data was cleared");
}

/** One attempt. With `layout` null it only looks: any version, and never creates a database. */
function attempt(layout) {
  return new Promise((resolve, reject) => {
    let settled = false;
    let fresh = false;
    const settle = (act, value) => {
      if (settled) return;
      settled = true;
      clearTimeout(timer);
      act(value);
    };
    const timer = setTimeout(() => settle(reject, error_of("blocked", "the browser did not answer")), PATIENCE_MS);
    let opening;
    try {
      opening = layout === null ? indexedDB.open(DATABASE) : indexedDB.open(DATABASE, layout);
    } catch (cause) {
      settle(reject, store_error(cause));
      return;
    }
    opening.onupgradeneeded = () => {
      fresh = true;
      if (layout === null || settled) opening.transaction.abort();
      else build(opening.result);
    };
    opening.onblocked = () => settle(reject, error_of("blocked", "another tab did not give way"));
    opening.onerror = () => settle(reject, store_error(opening.error));
    opening.onsuccess = () => {
      // An answer that comes after we gave up must not keep the database from other tabs.
      if (settled) opening.result.close();
      else settle(resolve, { database: opening.result, fresh });
    };
  });
}

async function attempt_twice(layout) {
  try {
    return await attempt(layout);
  } catch (first) {
    if (first.kind === "newer" || first.kind === "blocked") throw first;
    await new Promise((later) => setTimeout(later, RETRY_AFTER_MS));
    return attempt(layout);
  }
}

/** Opens the records of this browser. Resolves to a JSON text and never rejects:
 *  `{"answer":"ready","fresh":bool}` (fresh: nothing was stored here before),
 *  `{"answer":"newer",…}` (made by a newer version), `{"answer":"unreadable",…}`; the last two carry
 *  `kind`, `message` and `detail`. Nothing is ever deleted or repaired by opening. */
export function open() {
  opening_now ??= open_once().finally(() => { opening_now = null; });
  return opening_now;
}

async function open_once() {
  try {
    if (connection) return JSON.stringify({ answer: "ready", fresh: false, detail: "" });
    const { database, fresh } = await attempt_twice(LAYOUT);
    const missing = STORES.filter((name) => !database.objectStoreNames.contains(name));
    if (missing.length > 0) {
      database.close();
      throw error_of("unreadable", `the database has no ${missing.join(", ")}`);
    }
    keep(database);
    return JSON.stringify({ answer: "ready", fresh, detail: "" });
  } catch (cause) {
    const { kind, message, detail } = store_error(cause);
    return JSON.stringify({ answer: kind === "newer" ? "newer" : "unreadable", kind, message, detail });
  }
}

/** Runs `read(database)` on whatever is there, of any version, without ever creating anything: for
 *  saving raw records when the app itself cannot open them. `read` gets null where nothing exists. */
export async function look(read) {
  if (connection) return read(connection);
  let found;
  try {
    found = (await attempt_twice(null)).database;
  } catch (cause) {
    if (store_error(cause).kind !== "aborted") throw cause;
    return read(null);
  }
  found.onversionchange = () => found.close();
  try {
    return await read(found);
  } finally {
    found.close();
  }
}

// ---- transactions ----------------------------------------------------------------------------

/** A request as a promise. */
export function answer(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/** Runs `work(transaction)` and settles only when the transaction has: resolved after `complete`,
 *  rejected when it aborted for whatever reason, even after its last request had succeeded. */
export async function within(database, names, mode, work) {
  if (!database) throw error_of("closed", "the records are not open");
  let transaction;
  try {
    transaction = mode === "readwrite"
      ? database.transaction(names, mode, { durability: "strict" })
      : database.transaction(names, mode);
  } catch (cause) {
    throw store_error(cause);
  }
  const ended = new Promise((resolve) => {
    transaction.oncomplete = () => resolve(true);
    transaction.onabort = () => resolve(false);
  });
  let value;
  let failure = null;
  try {
    value = await work(transaction);
  } catch (cause) {
    failure = store_error(cause);
    try {
      transaction.abort();
    } catch {
      // It had ended by itself; `ended` says how.
    }
  }
  const committed = await ended;
  if (committed && failure === null) return value;
  // The transaction's own reason (a full disk, say) tells more than the "aborted" of its requests.
  if (failure !== null && failure.kind !== "aborted") throw failure;
  throw store_error(transaction.error ?? new DOMException("the transaction was aborted", "AbortError"));
}

/** A read over the open database. */
export function reading(names, work) {
  return within(connection, names, "readonly", work);
}

/** A write over the open database, durable before it resolves. */
export function writing(names, work) {
  return within(connection, names, "readwrite", work);
}
