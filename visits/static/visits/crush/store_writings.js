/* Writings and drafts: what the trimmer put down. */

import { tell, tellTabs } from "./store_news.js";
import { emptyDay, keyOf } from "./store_seat.js";
import { write } from "./phone_db.js";
import { uuid7 } from "./uuid7.js";

/**
 * Keep the cow as far as she is put down; null when she is not begun. Calls are kept in the order in which they were
 * made, so none needs to wait for the one before.
 */
export async function putDraft(visit, cowKey, draft) {
  const key = keyOf(visit);
  await write(["drafts"], async (transaction) => {
    const drafts = transaction.objectStore("drafts");
    await (draft === null ? drafts.delete([key, cowKey]) : drafts.put({ key, cowKey, draft }));
  });
  tellTabs("draft");
}

/** The cow goes as she came: her draft, and the pictures of her if nothing was ever put down for her. */
export async function letGoDraft(visit, cowKey) {
  const key = keyOf(visit);
  await write(["writings", "drafts", "photos", "pictures"], async (transaction) => {
    const drafts = transaction.objectStore("drafts");
    const row = await drafts.get([key, cowKey]);
    await drafts.delete([key, cowKey]);
    if (row) await dropPicturesOf(transaction, key, row.draft.record);
  });
  tell("written");
}

/* A picture of a cow of whom nothing is put down, here or at the office, belongs to nobody. */
async function dropPicturesOf(transaction, key, record) {
  const all = (name) => transaction.objectStore(name).index("key").getAll(key);
  if ((await all("writings")).some((one) => one.record === record)) return;
  const notes = (await all("photos")).filter((note) => note.record === record && note.state !== "sent");
  const gone = notes.flatMap(({ uid }) => ["photos", "pictures"].map((name) => transaction.objectStore(name).delete(uid)));
  await Promise.all(gone);
}

/**
 * Put down one version of one thing; the cow's draft goes in the same transaction.
 * @param {{visit: number, kind: string, record: string, after: string|null, is_gone: boolean, content: object,
 *   cowKey: string|null, mends: string|undefined}} made `mends`: the refused writing that this one stands in for
 * @returns {Promise<object>} the writing as kept
 */
export async function addWriting(made) {
  const { visit, kind, record, content, cowKey = null, after = null, is_gone = false, mends } = made;
  const key = keyOf(visit);
  const wire = { uid: uuid7(), kind, record, after, made_at: new Date().toISOString(), is_gone, content };
  const kept = await write(["days", "writings", "drafts"], async (transaction) => {
    const [days, writings] = ["days", "writings"].map((name) => transaction.objectStore(name));
    const day = (await days.get(key)) ?? emptyDay(key, visit);
    const writing = { ...wire, not_before: day.now, ...asNew(key, visit, cowKey, day.made + 1) };
    const work = [days.put({ ...day, made: day.made + 1 }), writings.add(writing)];
    if (cowKey) work.push(transaction.objectStore("drafts").delete([key, cowKey]));
    if (mends) work.push(writings.delete(mends));
    await Promise.all(work);
    return writing;
  });
  tell("written");
  return kept;
}

function asNew(key, visit, cowKey, seq) {
  return { key, visit, cowKey, seq, state: "waiting", shows: false, faults: [], placed_at: null, by: null, beside: [] };
}

/** Let go of a writing that was refused (after it was mended, or because it is not wanted). True if it was there. */
export async function dropRefused(uid) {
  const went = await write(["writings", "photos", "pictures"], async (transaction) => {
    const writings = transaction.objectStore("writings");
    const row = await writings.get(uid);
    if (row?.state !== "refused") return false;
    await writings.delete(uid);
    if (row.kind === "cow") await dropPicturesOf(transaction, row.key, row.record);
    return true;
  });
  if (went) tell("written");
  return went;
}

/** Let refused writings and photos wait to be sent once more, as they are. @param {string[]} uids */
export async function sendAgain(uids) {
  await write(["writings", "photos"], async (transaction) => {
    for (const name of ["writings", "photos"]) {
      const store = transaction.objectStore(name);
      for (const row of await Promise.all(uids.map((uid) => store.get(uid)))) {
        if (row?.state === "refused") await store.put({ ...row, state: "waiting", faults: [] });
      }
    }
  });
  tell("written");
}

/** Delete that row if it may go; photos lose their picture too. */
export async function dropIf(name, uid, mayGo) {
  const stores = name === "photos" ? [name, "pictures"] : [name];
  const went = await write(stores, async (transaction) => {
    const row = await transaction.objectStore(name).get(uid);
    if (!row || !mayGo(row)) return false;
    await Promise.all(stores.map((store) => transaction.objectStore(store).delete(uid)));
    return true;
  });
  if (went) tell("written");
  return went;
}
