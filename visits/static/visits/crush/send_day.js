/* Sends what waits of one day, in small batches, until nothing waits or something stands in the way.

   Sending twice is harmless: ids are made on the phone and the server knows each one again. So a lost answer needs no
   thought: what was not answered still waits, and is sent again. */

import { photoOf, writingsOf } from "./addresses.js";
import { askServer } from "./ask_server.js";
import { markRefused, markSent, nextToSend, takeAnswer } from "./store_answers.js";
import { phoneNow } from "./store_day.js";
import { pictureOf } from "./store_photos.js";
import { keyOf } from "./store_seat.js";

const MOST = 50;
const WIRE = ["uid", "kind", "record", "after", "made_at", "not_before", "is_gone", "content"];

/**
 * @param {string} key of the day @param {number} visit @param {Set<string>} passOver what the server could not read
 * @returns {Promise<{trouble: string, waitMs: number, hasNews: boolean}>}
 */
export async function sendDay(key, visit, passOver) {
  // Somebody else may sign in while this goes on: all of it goes with the token of whose it is, or not at all.
  const { who, token } = await phoneNow();
  if (key === keyOf(visit, "")) return done(false); // the first papers have only just come: the page loads them now
  if (keyOf(visit, who) !== key) return { trouble: "other_person", waitMs: 0, hasNews: false };
  const written = await sendWritings(key, visit, { passOver, token });
  if (written.trouble) return written;
  const photos = await sendPhotos(key, { passOver, token });
  return { ...photos, hasNews: written.hasNews };
}

async function sendWritings(key, visit, { passOver, token }) {
  let most = MOST;
  let hasNews = false;
  for (;;) {
    const next = await nextToSend(key, { most, passOver });
    if (!next.day) return done(hasNews);
    const { trouble, body, waitMs } = await askServer(writingsOf(visit), { method: "POST", body: batch(next), token });
    const size = next.writings.length;
    if (trouble === "too_large" || trouble === "malformed") {
      if (size === 0) return { trouble: "server", waitMs, hasNews };
      if (size === 1) await setAside(trouble, next.writings[0], passOver);
      most = size === 1 ? MOST : Math.floor(size / 2);
      continue;
    }
    if (trouble) return { trouble, waitMs, hasNews };
    if (!isAnswer(body)) return { trouble: "server", waitMs, hasNews };
    hasNews = (await takeAnswer(key, body, next.day.begun !== null)) || hasNews;
    const answered = new Set(body.answers.map((one) => one.uid));
    // Named neither kept nor refused: not sent again and again in this round.
    next.writings.filter((one) => !answered.has(one.uid)).forEach((one) => passOver.add(one.uid));
    const isMore = body.more && body.cursor > next.day.cursor;
    if (size < most && !isMore) return done(hasNews);
    most = Math.min(MOST, most * 2);
  }
}

function done(hasNews) {
  return { trouble: "", waitMs: 0, hasNews };
}

function isAnswer(body) {
  return Array.isArray(body?.answers) && Array.isArray(body?.others) && typeof body?.now === "string";
}

function batch({ phone, day, writings }) {
  const onWire = writings.map((one) => Object.fromEntries(WIRE.map((name) => [name, one[name]])));
  const sent_at = new Date().toISOString();
  return JSON.stringify({ phone: phone.id, sent_at, seen: day.cursor, begun: day.begun, writings: onWire });
}

/* One that alone is too large will never pass: the trimmer is told. One that could not be read waits for later. */
async function setAside(trouble, writing, passOver) {
  passOver.add(writing.uid);
  if (trouble === "too_large") {
    await markRefused("writings", writing.uid, [{ field: "", reason: "Too large to be sent." }]);
  }
}

async function sendPhotos(key, { passOver, token }) {
  const { photos } = await nextToSend(key, { passOver });
  for (const note of photos) {
    const body = await pictureOf(note.uid);
    if (!body) continue; // thrown away meanwhile
    const address = photoOf(note, new Date().toISOString());
    const answer = await askServer(address, { method: "PUT", body, type: "image/jpeg", token });
    if (answer.trouble === "too_large" || answer.trouble === "malformed") {
      const reason = answer.body?.detail ?? "The photo was refused.";
      await markRefused("photos", note.uid, [{ field: "", reason }]);
    } else if (answer.trouble) {
      return { trouble: answer.trouble, waitMs: answer.waitMs };
    } else {
      await markSent("photos", note.uid);
    }
  }
  return { trouble: "", waitMs: 0 };
}
