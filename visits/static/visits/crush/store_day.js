/* A visit's papers as fetched, and what the phone itself knows of the day. */

import { tidy } from "./store_counts.js";
import { takeWritten } from "./store_answers.js";
import { tell } from "./store_news.js";
import { emptyDay, keyOf, phoneOf, sit, sittingHere, whoOf } from "./store_seat.js";
import { read, write } from "./phone_db.js";
import { sessionToken } from "./token.js";
import { uuid7 } from "./uuid7.js";

let lastRead = { at: "", papers: null };

/**
 * All that is kept of a visit, for whoever the phone last heard to be signed in.
 * @param {number|null} visit null: only the phone's own settings
 * @returns {Promise<{papers: object|null, writings: object[], drafts: Map<string, object>, photos: object[],
 *   phone: {id, begun, is_quiet, is_still, keeps_awake}, visit_now: object|null}>}
 */
export async function loadVisit(visit) {
  const phone = await ourPhone();
  sit(phone);
  const key = keyOf(visit);
  return read(["days", "papers", "writings", "drafts", "photos"], async (transaction) => {
    const all = (name) => transaction.objectStore(name).index("key").getAll(key);
    const day = await transaction.objectStore("days").get(key);
    const [papers, writings, drafts, photos] = await Promise.all([
      papersOf(transaction, key, day),
      all("writings"),
      all("drafts"),
      all("photos"),
    ]);
    return {
      papers: papers ? withState(papers, day?.visit_now) : null,
      writings: writings.sort((one, other) => one.seq - other.seq || (one.uid < other.uid ? -1 : 1)),
      drafts: new Map(drafts.map((row) => [row.cowKey, row.draft])),
      photos,
      phone: { ...phone, begun: day?.begun ?? null },
    };
  });
}

/* Read once for each time they were fetched: a herd of 600 is too much to read again after each tap. */
async function papersOf(transaction, key, day) {
  const at = `${key} ${day?.papers_at}`;
  if (lastRead.at === at) return lastRead.papers;
  const row = await transaction.objectStore("papers").get(key);
  lastRead = { at, papers: row?.papers ?? null };
  return lastRead.papers;
}

/* The visit's state may have moved on since the papers were fetched: the last answer says. */
function withState(papers, now) {
  return now ? { ...papers, visit: { ...papers.visit, ...now } } : papers;
}

/** The phone's row as it is now, whoever this page works for. */
export function phoneNow() {
  return read(["phone"], phoneOf);
}

/** What the phone knows of a day, undefined where it knows nothing. */
export function dayOf(key) {
  return read(["days"], (transaction) => transaction.objectStore("days").get(key));
}

/** The phone's row, given an id when it is first looked at. */
async function ourPhone() {
  const known = await phoneNow();
  if (known.id) return known; // this is asked with each change: a write would wait for the disk each time
  return write(["phone"], async (transaction) => {
    const phone = await phoneOf(transaction);
    if (phone.id) return phone; // another tab was first
    phone.id = uuid7();
    await transaction.objectStore("phone").put(phone, "phone");
    return phone;
  });
}

/**
 * Keep what papers.json answered. From now on the phone is that person's (`papers.seat`); the page goes over to them
 * with its next `loadVisit`. What waits to be sent stays as it is.
 */
export async function keepPapers(papers, token = sessionToken()) {
  const { written, ...rest } = papers;
  const who = whoOf(papers.seat);
  const key = keyOf(papers.visit.id, who);
  await ourPhone();
  const asks = await write(["phone", "days", "papers", "writings", "drafts"], async (transaction) => {
    const phone = await phoneOf(transaction);
    const seated = { ...phone, who, name: papers.seat.name, token, asked_to_stay: true };
    await transaction.objectStore("phone").put(seated, "phone");
    const cows = [...rest.cows, ...(await cowsInWork(transaction, key, rest.cows))];
    await transaction.objectStore("papers").put({ key, papers: { ...rest, cows } });
    const day = (await transaction.objectStore("days").get(key)) ?? emptyDay(key, papers.visit.id);
    // Papers that were overtaken by a later answer on the way say nothing new of what is written.
    const isFresh = papers.cursor >= day.cursor;
    if (isFresh) await takeWritten(transaction, key, papers.visit.id, written, phone.id);
    await transaction.objectStore("days").put({ ...day, ...dayFacts(papers), cursor: Math.max(day.cursor, papers.cursor) });
    return !phone.asked_to_stay;
  });
  // Asked once, when there is something to keep: without it a full phone may throw the day away.
  if (asks) await navigator.storage?.persist?.().catch(() => false);
  await tidy();
  tell(who === sittingHere() ? "came" : "person");
}

/* Sold at the desk while she stands in the crush: who was put down or begun here keeps her number and her place. */
async function cowsInWork(transaction, key, cows) {
  const before = (await transaction.objectStore("papers").get(key))?.papers.cows ?? [];
  const there = new Set(cows.map((cow) => cow.id));
  const missing = before.filter((cow) => !there.has(cow.id));
  if (missing.length === 0) return [];
  const all = (name) => transaction.objectStore(name).index("key").getAll(key);
  const held = new Set([...(await all("drafts")), ...(await all("writings"))].map((one) => one.cowKey));
  return missing.filter((cow) => held.has(`c${cow.id}`));
}

function dayFacts(papers) {
  const { state, started_at, finished_at } = papers.visit;
  return {
    name: papers.seat.name,
    farm: papers.farm.name,
    day: papers.visit.day,
    now: papers.fetched_at,
    papers_at: papers.fetched_at,
    visit_now: { state, started_at, finished_at },
  };
}

/** Change the phone's own settings: is_quiet, is_still, keeps_awake … */
export async function putPhone(changes) {
  await ourPhone();
  await write(["phone"], async (transaction) => {
    await transaction.objectStore("phone").put({ ...(await phoneOf(transaction)), ...changes }, "phone");
  });
}

/** The visit was begun here. @param {{at: string, checked: boolean}|null} begun */
export async function putBegun(visit, begun) {
  const key = keyOf(visit);
  await write(["days"], async (transaction) => {
    const day = (await transaction.objectStore("days").get(key)) ?? emptyDay(key, visit);
    await transaction.objectStore("days").put({ ...day, begun, begun_told: begun === null });
  });
  tell("written");
}
