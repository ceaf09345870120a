/* What the server answered: which writings arrived, what shows of each thing, what other phones wrote. */

import { groupOf } from "./shown.js";
import { tell } from "./store_news.js";
import { read, write } from "./phone_db.js";

const BATCH = 50;

/**
 * What to send next of a day, in the order in which it was put down.
 * @returns {Promise<{day: object|undefined, phone: object, writings: object[], photos: object[]}>}
 */
export function nextToSend(key, { most = BATCH, passOver = new Set() } = {}) {
  return read(["phone", "days", "writings", "drafts", "photos"], async (transaction) => {
    const waiting = (name) => transaction.objectStore(name).index("waits").getAll([key, "waiting"]);
    const [phone, day, writings, photos] = await Promise.all([
      transaction.objectStore("phone").get("phone"),
      transaction.objectStore("days").get(key),
      waiting("writings"),
      waiting("photos"),
    ]);
    const sendable = (rows) => rows.filter((row) => !passOver.has(row.uid));
    const inOrder = sendable(writings).sort((one, other) => one.seq - other.seq);
    const held = photos.length > 0 ? await recordsBegun(transaction, key) : new Set();
    const ready = photos.filter((note) => !held.has(note.record));
    return { day, phone, writings: inOrder.slice(0, most), photos: sendable(ready) };
  });
}

/* Cows who are begun and not put down: she may yet be let go, and her pictures with her. */
async function recordsBegun(transaction, key) {
  const all = (name) => transaction.objectStore(name).index("key").getAll(key);
  const [drafts, writings] = await Promise.all([all("drafts"), all("writings")]);
  const begun = new Set(drafts.map(({ draft }) => draft.record));
  for (const { record } of writings) begun.delete(record);
  return begun;
}

/** Keep an answer to a batch. Taking the same answer twice changes nothing. @returns {Promise<boolean>} did others write? */
export async function takeAnswer(key, answer, begunTold) {
  const others = await write(["phone", "days", "writings"], async (transaction) => {
    const { id } = await transaction.objectStore("phone").get("phone");
    const days = transaction.objectStore("days");
    const day = await days.get(key);
    if (!day) return 0;
    const sheet = await sheetOf(transaction, key, day.visit, id);
    answer.answers.forEach((one) => sheet.answer(one, answer.now));
    const news = answer.others.filter((one) => sheet.arrive(one));
    await sheet.save();
    const begun_told = day.begun_told || begunTold;
    const cursor = Math.max(day.cursor, answer.cursor);
    await days.put({ ...day, now: answer.now, cursor, begun_told, visit_now: answer.visit });
    return news.length;
  });
  tell("came");
  return others > 0;
}

/** Keep all that the server holds of the visit (papers.written), within the caller's transaction. */
export async function takeWritten(transaction, key, visit, written, phoneId) {
  const sheet = await sheetOf(transaction, key, visit, phoneId);
  written.forEach((one) => sheet.arrive(one));
  await sheet.save();
}

/** A writing, or photo, was refused outright: it is kept for mending. */
export function markRefused(store, uid, faults) {
  return mark(store, uid, { state: "refused", faults });
}

/** A photo has arrived. */
export function markSent(store, uid) {
  return mark(store, uid, { state: "sent", faults: [] });
}

async function mark(store, uid, changes) {
  await write([store], async (transaction) => {
    const row = await transaction.objectStore(store).get(uid);
    // It may have been thrown away while it was on its way.
    if (row) await transaction.objectStore(store).put({ ...row, ...changes });
  });
  tell("came");
}

/** The writings of a day, to be changed in memory and saved together. */
async function sheetOf(transaction, key, visit, phoneId) {
  const store = transaction.objectStore("writings");
  const rows = new Map((await store.index("key").getAll(key)).map((row) => [row.uid, row]));
  const changed = new Set();
  const gone = new Set();
  const change = (row, changes) => {
    rows.set(row.uid, { ...row, ...changes });
    changed.add(row.uid);
  };
  /* One version of a thing shows; so no other one of that thing does, nor one that was written beside it. */
  const show = (group, uid, beside) => {
    for (const row of rows.values()) {
      const shows = row.uid === uid;
      const isOfIt = groupOf(row) === group || beside.includes(row.uid);
      if (isOfIt && row.shows !== shows) change(row, { shows });
    }
  };
  /* A refused one that was written over by one that was kept is mended. */
  const dropMended = ({ after }) => {
    for (let before = rows.get(after); before?.state === "refused"; before = rows.get(before.after)) {
      rows.delete(before.uid);
      gone.add(before.uid);
    }
  };
  return {
    answer({ uid, outcome, faults = [], shows, beside = [] }, now) {
      const row = rows.get(uid);
      if (!row || row.state === "other") return;
      if (outcome === "refused") return change(row, { state: "refused", faults });
      change(row, { state: "sent", faults: [], placed_at: row.placed_at ?? now, beside });
      dropMended(row);
      if (shows) show(groupOf(row), shows, beside);
    },
    /* True if another phone's writing is new here, or looks different now. */
    arrive(wire) {
      const had = rows.get(wire.uid);
      const row = asCame(wire, had, key, visit, phoneId);
      const isSame = had && had.state === row.state && had.shows === wire.shows;
      change(row, {});
      if (wire.shows) show(groupOf(row), wire.uid, wire.beside ?? []);
      return row.state === "other" && !isSame;
    },
    save: () =>
      Promise.all([
        ...[...changed].filter((uid) => rows.has(uid)).map((uid) => store.put(rows.get(uid))),
        ...[...gone].map((uid) => store.delete(uid)),
      ]),
  };
}

function asCame(wire, had, key, visit, phoneId) {
  const { phone, ...rest } = wire;
  const state = phone === phoneId ? "sent" : "other";
  return { seq: 0, faults: [], ...had, ...rest, key, visit, cowKey: cowKeyOf(wire), state };
}

/** "c412" for a cow that the business knows, "n<uuid>" for one added at the crush, null for what is no cow. */
export function cowKeyOf({ kind, content }) {
  if (kind !== "cow") return null;
  const { id, new: added } = content.cow ?? {};
  return added ? `n${added.uid}` : `c${id}`;
}
