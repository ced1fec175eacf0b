// Puts the store on the page for the tests, and the faults a browser can have but seldom shows.

import * as shell from "./shell.js";
import * as store from "./store.js";
import * as texts from "./texts.js";
import { store_error } from "./store_base.js";

window.heard = [];
window.shell = shell;
window.store = store;
window.texts = texts;
window.kind_of = (cause) => store_error(cause).kind;
store.subscribe((text) => window.heard.push(JSON.parse(text)));

/** Calls a function of the store: `{value}` or `{error: {kind, message, detail}}`. */
window.call = async (name, ...given) => {
  try {
    return { value: (await store[name](...given)) ?? null };
  } catch (error) {
    return { error: { kind: error.kind, message: error.message, detail: error.detail } };
  }
};

const plain = { transaction: IDBDatabase.prototype.transaction, add: IDBObjectStore.prototype.add, open: IDBFactory.prototype.open };

window.faults = {
  /** Notes mode and durability of every transaction. */
  watch() {
    window.seen = [];
    IDBDatabase.prototype.transaction = function (...given) {
      const transaction = plain.transaction.apply(this, given);
      window.seen.push({ mode: transaction.mode, durability: transaction.durability, stores: Array.from(transaction.objectStoreNames) });
      return transaction;
    };
  },
  /** Aborts a transaction just after its `nth` add has succeeded. */
  abort_after_add(nth) {
    let done = 0;
    window.successes = 0;
    IDBObjectStore.prototype.add = function (...given) {
      const request = plain.add.apply(this, given);
      request.addEventListener("success", () => {
        window.successes += 1;
        done += 1;
        if (done === nth) request.transaction.abort();
      });
      return request;
    };
  },
  /** Makes the next `times` attempts to open fail as a damaged backing store does. */
  fail_open(times) {
    let left = times;
    IDBFactory.prototype.open = function (...given) {
      if (left-- <= 0) return plain.open.apply(this, given);
      const request = new EventTarget();
      request.error = new DOMException("Internal error opening backing store for indexedDB.open.", "UnknownError");
      setTimeout(() => request.onerror());
      return request;
    };
  },
  mend() {
    IDBDatabase.prototype.transaction = plain.transaction;
    IDBObjectStore.prototype.add = plain.add;
    IDBFactory.prototype.open = plain.open;
  },
};

/** A raw database made past the store: any version, any object stores. */
window.raw = (version, names) => new Promise((resolve, reject) => {
  const request = indexedDB.open("weftbook", version);
  request.onupgradeneeded = () => names.forEach((name) => request.result.createObjectStore(name, { keyPath: "id" }));
  request.onsuccess = () => {
    request.result.close();
    resolve(true);
  };
  request.onerror = () => reject(request.error);
});

window.ready = true;
