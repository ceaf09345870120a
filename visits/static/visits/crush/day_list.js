/* Who was put down today and who remains, from the papers and what shows now. Knows no screen. */

import { emptyEntry } from "./entry.js";
import { officeKey } from "./shown.js";

const tables = new WeakMap(); // a herd of 600 is not gone through anew for each row of a list

/** What shows now of the cows put down, the latest first. */
export function cowsDone(shown) {
  return [...shown.values()].filter((one) => one.kind === "cow").sort((one, other) => (whenPut(one) < whenPut(other) ? 1 : -1));
}

/** When it was put down: by this phone's clock if here, else by the server's, for another phone's clock may be wrong. */
export function whenPut(writing) {
  return writing.state === "other" ? (writing.placed_at ?? writing.made_at) : writing.made_at;
}

/** The cows of the papers by the key that they have on this phone. */
export function cowsByKey(papers) {
  if (!tables.has(papers)) tables.set(papers, new Map(papers.cows.map((cow) => [`c${cow.id}`, cow])));
  return tables.get(papers);
}

/**
 * Cows on the list of the day that were not put down, in the order of the list.
 * @returns {{cowKey: string, cow: object, mark: {kind, word}|null}[]}
 */
export function cowsRemaining(papers, shown) {
  const done = new Set(cowsDone(shown).flatMap((one) => [one.cowKey, officeKey(one)]));
  const known = cowsByKey(papers);
  const keys = papers.queue.map((id) => `c${id}`).filter((key) => known.has(key) && !done.has(key));
  return keys.map((key) => ({ cowKey: key, cow: known.get(key), mark: cowMark(known.get(key), papers.visit.day) }));
}

/**
 * Cows that are open and not put down: the one in the crush, and changes begun to others. Nothing may be forgotten.
 * A cow that was only looked at (nothing tapped) is not begun, but for the last one opened: she stands in the crush.
 * @returns {{cowKey: string, cow: {number, why}, mark: {kind, word}, isBegun: true}[]}
 */
export function cowsBegun(papers, kept, shown) {
  const known = cowsByKey(papers);
  const begun = [...kept.drafts].filter(([cowKey, draft]) => isChanged(draft, shown.get(cowKey), kept.drafts));
  return begun.map(([cowKey, draft]) => {
    const cow = known.get(cowKey) ?? { number: numberOf(cowKey, papers, kept), why: [] };
    const word = draft.after || draft.mends ? "Change begun" : "In the crush";
    return { cowKey, cow, mark: { kind: "due", word }, isBegun: true };
  });
}

/** Would anything be lost if this draft went? `standing` is what was put down of her, if anything. */
export function isChanged(draft, standing, drafts) {
  if (draft.after || draft.mends) return !standing || !isSame(draft.content, standing.content);
  if (!isSame(draft.content.entry, emptyEntry())) return true;
  return ![...drafts.values()].some((other) => !other.after && other.started_at > draft.started_at);
}

const isSame = (one, other) => JSON.stringify(one) === JSON.stringify(other);

/**
 * What is to be seen of a cow from afar: a meaning (urgent, due, planned), which has a shape, and a word.
 * @param {object} cow of the papers
 * @param {string} day of the visit, "2026-11-25"
 * @returns {{kind: string, word: string}|null}
 */
export function cowMark(cow, day) {
  if (cow.is_lame) return { kind: "urgent", word: "Lame" };
  if (cow.blocks.some((block) => block.off_due && block.off_due <= day)) return { kind: "due", word: "Block due" };
  if (cow.rechecks.some((recheck) => recheck.due_from <= day)) return { kind: "due", word: "Re-check" };
  if (cow.blocks.length > 0) return { kind: "planned", word: "Block on" };
  return null;
}

/**
 * How many cows the day has: those the farm said or those on the list, whichever is more, and never fewer than done.
 * 0 where nobody said.
 */
export function cowsOfDay(papers, shown) {
  const done = cowsDone(shown).length;
  const listed = done + cowsRemaining(papers, shown).length;
  const said = Math.max(papers.visit.head_count ?? 0, papers.queue.length && listed);
  return said ? Math.max(said, done) : 0;
}

/** The number that a cow wears, by her key: from the papers, or from what was put down when she was added. */
export function numberOf(cowKey, papers, kept) {
  const known = cowsByKey(papers).get(cowKey);
  if (known) return known.number;
  const one = kept.writings.find((writing) => writing.cowKey === cowKey && writing.content?.cow?.new);
  return one?.content.cow.new.number ?? kept.drafts.get(cowKey)?.content?.cow?.new?.number ?? "?";
}

/** What tells her from another of the same number: tag, where she is, what was noted. */
export function apartWords(cow) {
  const tags = cow.ids.filter((id) => id.value !== cow.number).map((id) => `${id.label} ${id.value}`);
  const dates = [
    cow.calving_due && `calving ${cow.calving_due}`,
    cow.dry_off_due && `dry-off ${cow.dry_off_due}`,
  ];
  return [...tags, cow.status, ...dates, cow.note].filter(Boolean).join(" · ");
}
