/* The turns of the blades as this phone knows them, and what a tap on the knives writes down. */

import { keepThing, shownOfKind } from "./bench_keep.js";
import { bladesNow, handNow } from "./rules_blades.js";
import { trimKind } from "./rules.js";

/**
 * The blades of the papers as they stand now; empty where the business keeps none, or the papers are of before.
 * @param {object} app
 * @returns {ReturnType<typeof bladesNow>}
 */
export function bladesOf(app) {
  return bladesNow(app.papers.blades ?? [], turnsOf(app), cutAt(app));
}

/** This visit's turns that show, oldest first, each with its writing. */
export function turnsOf(app) {
  const turns = shownOfKind(app, "blade").map((writing) => ({ ...writing.content, at: turnedAt(writing), record: writing.record, writing }));
  return turns.sort((one, other) => one.at - other.at);
}

/* By this phone's clock if it was said here, else by the server's: another phone's own may be wrong by hours. */
function turnedAt({ state, content, placed_at, made_at }) {
  const offBy = state === "other" && placed_at ? Date.parse(placed_at) - Date.parse(made_at) : 0;
  return Date.parse(content.at) + offBy;
}

/* When each cow that was cut was first noted: a change to her words in the evening moves her to no other knife. */
function cutAt(app) {
  const byUid = new Map(app.kept.writings.map((one) => [one.uid, one]));
  const cows = shownOfKind(app, "cow").filter((one) => trimKind(one.content.entry) !== "check");
  return cows.map((one) => {
    const seen = new Set();
    let first = one;
    for (let at = one; at && !seen.has(at.uid); at = byUid.get(at.after)) {
      seen.add(at.uid);
      first = at;
    }
    return Date.parse(first.state === "other" ? (first.placed_at ?? first.made_at) : first.made_at);
  });
}

/**
 * The knife to take next: the sharp one of the same kind and hand with the fewest cows on its edge; null for none.
 * @param {ReturnType<typeof bladesNow>} rows
 * @param {object} blade the one that was put away
 */
export function nextBlade(rows, blade) {
  const fit = rows.filter((row) => isLike(row.blade, blade) && row.blade.id !== blade.id && isReady(row));
  return fit.reduce((best, row) => (best && best.cows <= row.cows ? best : row), null);
}

/** May it be taken, and does it still cut? */
export function isReady(row) {
  return row.mayCut && !row.isDull && !row.isInHand;
}

/** One is worked with in place of the other. */
export function isLike(one, other) {
  return one.kind === other.kind && one.hand === other.hand;
}

/**
 * Take a blade in hand; another of its kind and hand is laid down for it.
 * @param {object} app @param {object} blade @param {object|null} on the turn that said why, if this goes on from it
 */
export function take(app, blade, on = null) {
  const rows = bladesOf(app);
  const laidDown = rows.filter((row) => isLike(row.blade, blade)).map((row) => row.blade.id);
  return keepTurn(app, { in_hand: [...inHand(app, laidDown), blade.id] }, on);
}

/** Lay a blade down; nothing is said against it. */
export function layDown(app, blade) {
  return keepTurn(app, { in_hand: inHand(app, [blade.id]) });
}

/** It drags: out of hand, and its edge has ended. */
export function dragged(app, blade) {
  return keepTurn(app, { in_hand: inHand(app, [blade.id]), went_dull: [blade.id] });
}

/** @param {"cracked"|"chipped"} fault  out of use at once */
export function broke(app, blade, fault) {
  return keepTurn(app, { in_hand: inHand(app, [blade.id]), [fault]: [blade.id] });
}

/* All that is in hand now and may cut, but for those. */
function inHand(app, without) {
  const out = new Set([...without, ...bladesOf(app).filter((row) => !row.mayCut).map((row) => row.blade.id)]);
  return handNow(app.papers.blades, turnsOf(app)).filter((id) => !out.has(id));
}

/* A turn that was said since stands after the one to be gone on from: then it is a turn of its own. */
function keepTurn(app, said, from = null) {
  const on = from && turnsOf(app).at(-1)?.record === from.record ? from : null;
  const whole = { in_hand: [], went_dull: [], cracked: [], chipped: [], at: new Date().toISOString() };
  const content = on ? { ...on.content, in_hand: said.in_hand } : { ...whole, ...said };
  return keepThing(app, { kind: "blade", content, on });
}
