/* What waits on this phone, which days are kept, and letting go of days that are done with. */

import { tell } from "./store_news.js";
import { keyOf, sittingHere } from "./store_seat.js";
import { read, write } from "./phone_db.js";

const DAYS_KEPT = 14;
const DAY_MS = 86_400_000;
const COUNTED = ["days", "writings", "drafts", "photos"];
const EVERY = ["days", "papers", "writings", "drafts", "photos", "pictures"];

/**
 * How much waits, of one visit or of all days of whoever this page works for. `waiting` counts writings and photos.
 * @returns {Promise<{waiting: number, refused: number, cows: number, photos: number, begun: number}>}
 */
export async function countWaiting(visit = null) {
  const days = await everyDay((day) => day.who === sittingHere() && (visit === null || day.visit === visit));
  const cows = await Promise.all(days.map(cowsWaiting));
  return { ...sumOf(days), cows: cows.reduce((sum, number) => sum + number, 0) };
}

/** The days of whoever this page works for, earliest first. @returns {Promise<{visit, farm, day, waiting}[]>} */
export async function daysKept() {
  const ours = await everyDay((day) => day.who === sittingHere() && day.farm);
  return ours.sort((one, other) => (one.day < other.day ? -1 : 1));
}

/**
 * Days with what waits of each, whosever they are. Counted, not read: this is done after each tap.
 * @returns {Promise<{key, who, name, visit, farm, day, waiting, refused, photos, begun, drafts}[]>}
 */
export function everyDay(isWanted = () => true) {
  return read(COUNTED, (transaction) => daysWith(transaction, isWanted));
}

async function daysWith(transaction, isWanted = () => true) {
  const days = await transaction.objectStore("days").getAll();
  return Promise.all(days.filter(isWanted).map((day) => withCounts(transaction, day)));
}

async function withCounts(transaction, day) {
  const count = (name, state) => transaction.objectStore(name).index("waits").count([day.key, state]);
  const [writings, photos, refused, badPhotos, drafts] = await Promise.all([
    count("writings", "waiting"),
    count("photos", "waiting"),
    count("writings", "refused"),
    count("photos", "refused"),
    transaction.objectStore("drafts").index("key").count(day.key),
  ]);
  const { key, who, name, visit, farm } = day;
  return {
    key, who, name, visit, farm, day: day.day,
    waiting: writings + photos,
    refused: refused + badPhotos,
    photos,
    begun: day.begun && !day.begun_told ? 1 : 0,
    drafts,
  };
}

/** The counts of several days together. */
export function sumOf(days) {
  const sum = (name) => days.reduce((total, day) => total + day[name], 0);
  return Object.fromEntries(["waiting", "refused", "photos", "begun"].map((name) => [name, sum(name)]));
}

/** How many cows of a day have something that waits, or waits to be mended. */
export async function cowsWaiting({ key }) {
  const found = await read(["writings"], (transaction) => {
    const index = transaction.objectStore("writings").index("waits");
    return Promise.all(["waiting", "refused"].map((state) => index.getAll([key, state])));
  });
  return new Set(found.flat().filter((one) => one.cowKey).map((one) => one.cowKey)).size;
}

/** Was something of it put down that is on this phone only? */
export function isHeld(day) {
  return day.waiting + day.refused + day.begun > 0;
}

/**
 * Let a day go from this phone. Refused while something of it is on this phone only, or a cow is half put down.
 * @returns {Promise<{isGone: boolean, waiting: number, refused: number, drafts: number}>}
 */
export async function forgetDay(visit) {
  const key = keyOf(visit);
  const { isGone, day } = await letGo((one) => one.key === key, (one) => isHeld(one) || one.drafts > 0);
  const { waiting = 0, begun = 0, refused = 0, drafts = 0 } = day ?? {};
  return { isGone, waiting: waiting + begun, refused, drafts };
}

/** Days long past of which nothing waits: other people's data leave the phone by themselves. */
export function tidy(now = Date.now()) {
  const oldest = new Date(now - DAYS_KEPT * DAY_MS).toISOString().slice(0, 10);
  return letGo((day) => day.day !== null && day.day < oldest);
}

/** Delete the days that `mayGo` names, except those that `stays` names. */
export async function letGo(mayGo, stays = isHeld) {
  const found = await write(EVERY, async (transaction) => {
    const named = (await daysWith(transaction)).filter(mayGo);
    const held = named.filter(stays);
    for (const day of named) if (!stays(day)) await remove(transaction, day.key);
    return { isGone: held.length === 0, day: held[0] };
  });
  tell("came");
  return found;
}

async function remove(transaction, key) {
  const keysIn = (name) => transaction.objectStore(name).index("key").getAllKeys(key);
  for (const uid of await keysIn("photos")) await transaction.objectStore("pictures").delete(uid);
  for (const name of ["writings", "photos", "drafts"]) {
    for (const row of await keysIn(name)) await transaction.objectStore(name).delete(row);
  }
  for (const name of ["papers", "days"]) await transaction.objectStore(name).delete(key);
}
