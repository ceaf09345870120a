/* What was used up: counted from the cows, the visit and its wash-downs, corrected by hand. */

import { materials, visitMaterials, washMaterial } from "./rules.js";

/* Fewer cows say more about themselves than about the day. */
const FEWEST_COWS = 3;

/**
 * @param {Map<string, object>} shown what shows now
 * @param {object} papers
 * @returns {Array<{item: object, byCows: number, once: number, mixed: number, counted: number, extra: number,
 *   used: number, left: number|null, kept: object|null}>}
 *   one for each consumable carried; `counted` is what the cows, the visit itself (`once`) and the wash-downs (`mixed`)
 *   come to; `left` in the van, below nothing where more was used than was thought to be there, null where that is not
 *   known (`in_van` leaves this visit out); `kept` the correction that stands
 */
export function kitUsed(shown, papers) {
  const now = [...shown.values()];
  const cows = countCows(now, papers);
  const visit = visitMaterials(papers);
  const washes = countWashes(now, papers);
  return papers.consumables.map((item) => {
    const kept = correctionOf(now, item.id);
    const [byCows, once, mixed] = [cows, visit, washes].map((from) => tidy(from.get(item.id) ?? 0));
    const counted = tidy(byCows + once + mixed);
    const extra = kept ? Number(kept.content.extra) : 0;
    const used = tidy(counted + extra);
    const left = isKnown(item.in_van) ? tidy(Number(item.in_van) - used) : null;
    return { item, byCows, once, mixed, counted, extra: tidy(extra), used, left, kept };
  });
}

/**
 * For how many cows more the van's stock lasts, when that is fewer than are to come: what is left by what a cow used so
 * far, corrections included.
 * @param {{byCows: number, extra: number, left: number|null}} row
 * @param {{done: number, left: number|null}} tally cows done, cows to come
 * @returns {number|null} whole cows; null where it lasts, where too few cows are done to tell, or nothing is known
 */
export function lastsFor({ byCows, extra, left }, { done, left: toCome }) {
  const perCow = (byCows + extra) / done;
  if (left === null || left < 0 || !toCome || done < FEWEST_COWS || !(perCow > 0)) return null;
  const cows = Math.floor(left / perCow + 1e-9);
  return cows < toCome ? cows : null;
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

/**
 * What lies there as one sees it, as `seen_words` has it on the office's pages: pieces down to whole and half ones, whole
 * ml and g.
 * @param {number} value
 * @param {string} unit
 * @returns {string} "3½ pairs", "1,200 ml", "15"
 */
export function seenWords(value, unit) {
  const step = unit === "each" || unit === "pair" ? 0.5 : 1;
  const seen = Math.floor(tidy(value) / step + 1e-9) * step;
  const whole = Math.trunc(seen);
  const half = seen === whole ? "" : "½";
  const figure = whole || !half ? String(Math.abs(whole)).replace(/\B(?=(\d{3})+$)/g, ",") : "";
  const words = { each: "", pair: seen === 1 || (half && !whole) ? " pair" : " pairs" }[unit] ?? ` ${unit}`;
  return `${seen < 0 ? "−" : ""}${figure}${half}${words}`;
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

function countWashes(writings, papers) {
  const total = new Map();
  for (const writing of writings) {
    if (writing.kind !== "wash" || writing.state === "refused") continue;
    const mixed = washMaterial(writing.content, papers);
    if (mixed) total.set(mixed.item.id, (total.get(mixed.item.id) ?? 0) + mixed.used);
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
