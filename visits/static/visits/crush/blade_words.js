/* Knives and discs in words. */

import { things } from "./sign_off_words.js";

/** "17 cows on this edge", "went dull after 31 cows", "out of use: cracked". */
export function edgeWords(row) {
  if (row.fault) return `out of use: ${row.fault}`;
  if (!row.blade.may_cut) return "out of use";
  if (row.isDull) return `dull after ${things(row.cows, "cow")}`;
  return `${things(row.cows, "cow")} on this ${row.blade.is_turned ? "disc" : "edge"}`;
}

/** Has the edge cut more cows than one is counted on for? Then a word, and no more than that. */
export function isPast(row) {
  return row.mayCut && !row.isDull && row.cows > row.blade.counted_on;
}

/**
 * What is in hand, as the title of the page.
 * @param {ReturnType<typeof import("./rules_blades.js").bladesNow>} rows
 */
export function handWords(rows) {
  const held = rows.filter((row) => row.isInHand);
  if (held.length === 0) return "No knife in hand";
  if (held.every((row) => row.blade.is_turned) && rows.some((row) => !row.blade.is_turned)) {
    return `Only ${list(held.map((row) => row.blade.name))} in hand`;
  }
  if (held.length > 1) return `${list(held.map((row) => row.blade.name))} in hand`;
  return `${held[0].blade.name}: ${edgeWords(held[0])}`;
}

/** For a small button: "17 cows", "dull", "none in hand"; of several in hand the one that has gone furthest. */
export function inHandShort(rows) {
  const held = rows.filter((row) => row.isInHand);
  if (held.length === 0) return "none in hand";
  if (held.some((row) => row.isDull)) return "dull";
  const share = (row) => row.cows / row.blade.counted_on;
  const furthest = held.reduce((best, row) => (share(row) > share(best) ? row : best));
  return things(furthest.cows, "cow");
}

/** What the evening brings: edges that went dull today, and what was said broken. */
export function eveningRows(rows) {
  return { dull: rows.filter((row) => row.dulledAt !== null && !row.fault), broken: rows.filter((row) => row.fault) };
}

/** "Right, red handle in hand; right, blue handle went dull". */
export function turnWords(turn, blades) {
  const names = (ids) => list(ids.map((id) => blades.find((blade) => blade.id === id)?.name ?? "a blade of another van"));
  const parts = [
    turn.in_hand.length ? `${names(turn.in_hand)} in hand` : "Nothing in hand",
    turn.went_dull.length ? `${names(turn.went_dull)} went dull` : "",
    turn.cracked.length ? `${names(turn.cracked)} cracked` : "",
    turn.chipped.length ? `${names(turn.chipped)} chipped` : "",
  ];
  return parts.filter(Boolean).join("; ");
}

function list(names) {
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}
