/* Whose days this page works on. What one person wrote is never shown or sent under another's name, so every row is
   kept under "<business>:<user>", and a page stays with the person that it was loaded for until it loads again. */

const PHONE = { id: "", who: "", is_quiet: true, is_still: true, keeps_awake: true, asked_to_stay: false };
let sitting = "";

/** "<business>:<user>" of papers.seat. */
export function whoOf(seat) {
  return `${seat.business}:${seat.user}`;
}

/** Who this page works for, "" before the first papers. */
export function sittingHere() {
  return sitting;
}

/** From now on this page works for whoever the phone last heard to be signed in. */
export function sit(phone) {
  sitting = phone.who;
}

/** The key of that person's day (by default of whoever this page works for). */
export function keyOf(visit, who = sitting) {
  return `${who}/${visit}`;
}

/** The phone's own row; made in a first `write`. */
export async function phoneOf(transaction) {
  return { ...PHONE, ...(await transaction.objectStore("phone").get("phone")) };
}

/** A day of which nothing is known yet. */
export function emptyDay(key, visit) {
  const who = key.slice(0, key.lastIndexOf("/"));
  return {
    key, who, visit, name: "", farm: "", day: null, now: null, cursor: 0, begun: null, begun_told: true, made: 0,
    papers_at: null, visit_now: null,
  };
}
