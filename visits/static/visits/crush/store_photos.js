/* Photos of feet: a note of each, and the picture apart so that loading the day stays quick. */

import { tell } from "./store_news.js";
import { keyOf } from "./store_seat.js";
import { dropIf } from "./store_writings.js";
import { read, write } from "./phone_db.js";
import { uuid7 } from "./uuid7.js";

/**
 * Keep a photo, scaled already (photo_size.js).
 * @param {{visit: number, record: string, foot: string, blob: Blob}} photo `foot` "" for the whole cow
 * @returns {Promise<object>} its note {uid, visit, record, foot, taken_at, size, state, faults}
 */
export async function addPhoto({ visit, record, foot, blob }) {
  // The bytes, not the Blob: some browsers lose Blobs that were kept over a restart.
  const bytes = await blob.arrayBuffer();
  const taken_at = new Date().toISOString();
  const note = { uid: uuid7(), key: keyOf(visit), visit, record, foot, taken_at, size: bytes.byteLength };
  Object.assign(note, { state: "waiting", faults: [] });
  await write(["photos", "pictures"], async (transaction) => {
    await Promise.all([
      transaction.objectStore("photos").add(note),
      transaction.objectStore("pictures").add({ uid: note.uid, bytes }),
    ]);
  });
  tell("written");
  return note;
}

/** The picture of a note, as a JPEG; null when it is not on this phone. */
export async function pictureOf(uid) {
  const row = await read(["pictures"], (transaction) => transaction.objectStore("pictures").get(uid));
  return row ? new Blob([row.bytes], { type: "image/jpeg" }) : null;
}

/** Throw a photo away. True if it went; one that was sent stays. */
export function dropPhoto(uid) {
  return dropIf("photos", uid, (note) => note.state !== "sent");
}
