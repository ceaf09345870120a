/* What was used up: counted from the cows, corrected by hand. */

import { materials } from "./rules.js";

/**
 * @param {Map<string, object>} shown what shows now
 * @param {object} papers
 * @returns {Array<{item: object, counted: number, extra: number, used: number, left: number|null, kept: object|null}>}
 *   one for each consumable carried; `left` in the van, below nothing where more was used than was thought to be
 *   there, null where that is not known (`in_van` leaves this visit out); `kept` the correction that stands
 */
export function kitUsed(shown, papers) {
  const now = [...shown.values()];
  const counted = countCows(now, papers);
  return papers.consumables.map((item) => {
    const kept = correctionOf(now, item.id);
    const byCows = counted.get(item.id) ?? 0;
    const extra = kept ? Number(kept.content.extra) : 0;
    const used = tidy(byCows + extra);
    const left = isKnown(item.in_van) ? tidy(Number(item.in_van) - used) : null;
    return { item, counted: tidy(byCows), extra: tidy(extra), used, left, kept };
  });
}

/**
 * The correction to keep when the trimmer says how many were used in all.
 * @param {number} used
 * @param {number} counted
 * @returns {string} "-1.00": signed, two places
 */
export function extraFor(used, counted) {
  const extra = tidy(used - counted);
  return (extra === 0 ? 0 : extra).toFixed(2);
}

/**
 * A quantity without needless noughts.
 * @param {number} value
 * @returns {string}
 */
export function quantity(value) {
  return String(tidy(value)).replace("-", "−");
}

function countCows(writings, papers) {
  const total = new Map();
  for (const writing of writings) {
    if (writing.kind !== "cow") continue;
    for (const [id, number] of materials(writing.content.entry, papers)) {
      total.set(id, (total.get(id) ?? 0) + number);
    }
  }
  return total;
}

/* Two corrections of one thing, by two phones: the later one stands, as on the server. */
function correctionOf(writings, id) {
  const found = writings.filter((w) => w.kind === "kit" && w.content.consumable === id);
  return found.sort((a, b) => moment(a).localeCompare(moment(b)) || a.uid.localeCompare(b.uid)).at(-1) ?? null;
}

function moment(writing) {
  return new Date(writing.placed_at ?? writing.made_at).toISOString();
}

function isKnown(value) {
  return value !== null && value !== undefined && value !== "";
}

/* Millilitres and grams come in hundredths; floats must not show more. */
function tidy(value) {
  return Math.round(value * 100) / 100;
}
