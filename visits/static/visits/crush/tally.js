/* How the day stands: cows done and left, blocks, wraps, minutes a cow, and whether it will be clear of the milking.
   Knows no screen and no clock: the moment is handed in. */

import { cowsDone, cowsOfDay } from "./day_list.js";

/* Fewer gaps than these say more about one slow cow than about the day. */
const FEWEST_GAPS = 3;

/**
 * @param {Map<string, object>} shown  what shows now
 * @param {object} papers
 * @param {string|Date} now  the moment to reckon from
 * @returns {{
 *   done: number, left: number|null, blocks: number, wraps: number,
 *   secondsPerCow: number|null, by: "gaps"|"crush"|"",
 *   finish: string|null, doneBy: string|null, minutesOver: number, cowsThatFit: number|null}}
 *   `left` null: nobody said how many cows there are. `secondsPerCow` is a median: `by` "gaps" from one cow to the
 *   next, "crush" of the time in the crush alone while too few cows are done, "" unknown. `finish` is the estimate,
 *   `doneBy` the milking it must be clear of, `minutesOver` how far past it the estimate is (0: it fits, or cannot be
 *   said), `cowsThatFit` how many of those left can still be done before it (null: cannot be said)
 */
export function tallyOf(shown, papers, now) {
  const cows = cowsDone(shown);
  const all = cowsOfDay(papers, shown);
  const left = all ? Math.max(0, all - cows.length) : null;
  const pace = paceOf(cows);
  return {
    done: cows.length,
    left,
    blocks: countActions(cows, "block"),
    wraps: countActions(cows, "wrap"),
    ...pace,
    ...endOf(left, pace.secondsPerCow, papers.visit.done_by, new Date(now).getTime()),
  };
}

/**
 * The caution that stands beside the estimate; "" when the work will be clear of the milking or nothing can be said.
 * @param {ReturnType<typeof tallyOf>} tally
 * @param {(iso: string) => string} clock  an instant in words
 */
export function milkingCaution(tally, clock) {
  if (!tally.minutesOver) return "";
  const { left, cowsThatFit } = tally;
  const milking = clock(tally.doneBy);
  const cows = left === 1 ? "cow" : `${left} cows`;
  if (cowsThatFit === 0) return `Milking is at ${milking}: no time for the ${cows} left.`;
  return `Milking is at ${milking}: time for about ${cowsThatFit} of the ${left} cows left.`;
}

function countActions(cows, kind) {
  const actions = cows.flatMap((cow) => cow.content.entry.feet.flatMap((foot) => foot.actions));
  return actions.filter((action) => action.kind === kind).length;
}

function paceOf(cows) {
  const starts = cows.map(begunAt).sort((one, other) => one - other);
  const gaps = starts.slice(1).map((start, place) => (start - starts[place]) / 1000);
  if (gaps.length >= FEWEST_GAPS) return { secondsPerCow: median(gaps), by: "gaps" };
  const inCrush = cows.map((cow) => cow.content.entry.crush_seconds).filter((seconds) => seconds !== null);
  return inCrush.length ? { secondsPerCow: median(inCrush), by: "crush" } : { secondsPerCow: null, by: "" };
}

/* When she came into the crush. Her record was named then, and a UUIDv7 begins with its moment (RFC 9562, 5.7): later
   changes to her do not move it. A cow of another phone stands at the server's hour, since its clock may be wrong. */
function begunAt(writing) {
  if (writing.state !== "other" && writing.record[14] === "7") {
    return Number.parseInt(writing.record.replaceAll("-", "").slice(0, 12), 16);
  }
  return Date.parse(writing.placed_at ?? writing.made_at);
}

function endOf(left, secondsPerCow, doneBy, now) {
  const end = { finish: null, doneBy, minutesOver: 0, cowsThatFit: null };
  if (!left || secondsPerCow === null) return end;
  const finish = now + left * secondsPerCow * 1000;
  end.finish = new Date(finish).toISOString();
  if (!doneBy) return end;
  const room = Date.parse(doneBy) - now;
  end.minutesOver = Math.max(0, Math.ceil((finish - now - room) / 60_000));
  end.cowsThatFit = secondsPerCow > 0 ? Math.min(left, Math.max(0, Math.floor(room / (secondsPerCow * 1000)))) : left;
  return end;
}

function median(numbers) {
  const sorted = [...numbers].sort((one, other) => one - other);
  const middle = Math.floor(sorted.length / 2);
  return sorted.length % 2 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}
