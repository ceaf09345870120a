/*
 * Taking the last thing back, and taking that back again.
 *
 * Nothing is ever wiped: taking back is one more writing, with what stood before. So undoing twice is a redo, it holds
 * after the phone was off, and the office sees each version.
 */

import { groupOf } from "./shown.js";

const KINDS = new Set(["cow", "wash", "blade"]);

/**
 * The last thing put down on this phone, if it still counts; null where another phone has written over it, or where it
 * was refused: then it is told of, and an older thing is not to be taken back in its stead.
 * @param {object[]} writings all that are kept for this visit
 * @param {Map<string, object>} shown what shows now
 */
export function lastThing(writings, shown) {
  const [last] = writings.filter((one) => KINDS.has(one.kind) && one.state !== "other").sort(newestFirst);
  return last && last.state !== "refused" && stands(last, writings, shown) ? last : null;
}

/**
 * What to write so that things are as before `last`. A turn of the knives goes as a whole: which one came next was a part
 * of it.
 * @returns {{kind, record, after, is_gone, content, cowKey}} what the store is to add
 */
export function undoing(last, writings) {
  const { kind, record, cowKey } = last;
  const isWhole = kind === "blade" && !last.is_gone;
  const before = isWhole ? undefined : writings.find((one) => one.uid === last.after);
  const content = (before ?? last).content;
  return { kind, record, cowKey, content, after: last.uid, is_gone: before ? before.is_gone : !last.is_gone };
}

/** What to write so that this version of a thing is there no more. */
export function takingBack({ kind, record, cowKey, content, uid }) {
  return { kind, record, cowKey, content, after: uid, is_gone: true };
}

/** The cows that were taken back, by whoever, and were not put down again; the last one first. */
export function takenBack(writings, shown) {
  const gone = writings.filter((one) => one.kind === "cow" && one.is_gone && !shown.has(groupOf(one)));
  const last = new Map();
  for (const one of gone.sort(newestFirst).reverse()) last.set(groupOf(one), one);
  return [...last.values()].filter((one) => one.state !== "refused").reverse();
}

/**
 * What the button does, in words.
 * @param {string} what "cow 214", "the wash-down", "the knife change"
 */
export function undoWords(last, writings, what) {
  const then = undoing(last, writings);
  if (then.is_gone) return `Take back ${what}`;
  if (last.is_gone) return `Put ${what} back`;
  return `Take back the change to ${what}`;
}

/* In the order of the taps (`seq`), whatever the phone's clock did meanwhile; what was fetched anew has none. */
function newestFirst(one, other) {
  return other.seq - one.seq || (one.made_at < other.made_at ? 1 : -1);
}

/** Does it still count? Another phone may have written over it since. */
function stands(one, writings, shown) {
  if (writings.some((later) => later.after === one.uid && later.state !== "refused")) return false;
  const showing = shown.get(groupOf(one));
  return one.is_gone ? !showing : showing?.uid === one.uid;
}
