/* The one database on the phone, and how it is written: nothing is said to be kept before it is on the disk.

   phone     "phone" -> {id, who, name, token, is_quiet, is_still, keeps_awake, asked_to_stay}
   days      key -> {key, who, visit, name, farm, day, now, cursor, begun, begun_told, made, papers_at,
             visit_now}                                             (small: written often)
   papers    key -> {key, papers}                                      (large: written when fetched)
   writings  uid -> wire writing + {key, visit, cowKey, seq, state, shows, faults, placed_at, by, beside}
   drafts    [key, cowKey] -> {key, cowKey, draft}
   photos    uid -> {uid, key, visit, record, foot, taken_at, size, state, faults}
   pictures  uid -> {uid, bytes}                                       (the photo itself)
   `key` is one person's day: "<business>:<user>/<visit>". */

import { openDB } from "../../trimops/lib/idb.js";

const NAME = "trimops-crush";

/* One step for each version, oldest first. A step that has been on a phone is never changed: add another. */
const STEPS = [
  (db) => {
    db.createObjectStore("phone");
    db.createObjectStore("days", { keyPath: "key" });
    db.createObjectStore("papers", { keyPath: "key" });
    db.createObjectStore("drafts", { keyPath: ["key", "cowKey"] }).createIndex("key", "key");
    db.createObjectStore("pictures", { keyPath: "uid" });
    for (const name of ["writings", "photos"]) {
      const store = db.createObjectStore(name, { keyPath: "uid" });
      store.createIndex("key", "key");
      store.createIndex("waits", ["key", "state"]);
    }
  },
];

let opening = null;

function open() {
  opening ??= openDB(NAME, STEPS.length, {
    upgrade: (db, from, to, transaction) => STEPS.slice(from).forEach((step) => step(db, transaction)),
    // A newer page in another tab wants to add its step: make way, this page opens anew on the next tap.
    blocking: (from, to, event) => {
      event.target.close();
      opening = null;
    },
    terminated: () => {
      opening = null;
    },
  }).catch((fault) => {
    opening = null;
    throw fault;
  });
  return opening;
}

/**
 * Do `work` in one transaction; resolves when it is on the disk. All or nothing.
 * @template T
 * @param {string[]} stores @param {(transaction: object) => Promise<T>} work waits for nothing but the database
 * @returns {Promise<T>}
 */
export function write(stores, work) {
  return within(stores, "readwrite", work);
}

/** Read in one transaction, so that the parts fit together. */
export function read(stores, work) {
  return within(stores, "readonly", work);
}

async function within(stores, mode, work) {
  const db = await open();
  // "strict": the browser waits for the disk, not only for the system's promise to write it later.
  const transaction = db.transaction(stores, mode, { durability: "strict" });
  try {
    const [result] = await Promise.all([work(transaction), transaction.done]);
    return result;
  } catch (fault) {
    undo(transaction);
    throw fault;
  }
}

function undo(transaction) {
  try {
    transaction.abort();
  } catch {
    /* it has ended already */
  }
}
