/* What shows of each thing: the trimmer's own last word until the server has placed it, then what the server says. */

/** The key of what a writing is a version of: the cow's key, or the record of anything else. */
export function groupOf(writing) {
  return writing.cowKey ?? writing.record;
}

/** The key under which the papers have her, once the office has said which cow she is; null until then. */
export function officeKey(writing) {
  return writing.cow_id ? `c${writing.cow_id}` : null;
}

/**
 * @param {object[]} writings all that are kept of a visit, as `loadVisit` gives them
 * @returns {Map<string, object>} by cow key or record, the version that shows; what was taken back is not in it
 */
export function shownOf(writings) {
  const shown = new Map();
  for (const versions of grouped(writings)) {
    const one = lastWaiting(versions) ?? placedOrRefused(versions);
    if (one && !one.is_gone) shown.set(groupOf(one), one);
  }
  return shown;
}

function grouped(writings) {
  const thingOf = things(writings);
  const groups = new Map();
  for (const writing of writings) {
    const thing = thingOf(groupOf(writing));
    if (groups.has(thing)) groups.get(thing).push(writing);
    else groups.set(thing, [writing]);
  }
  return groups.values();
}

/* One cow may have two keys: added on two phones, or added on one and found in newer papers by the other. The server
   knows her for one, and says so by naming the one's writing beside the other's. */
function things(writings) {
  const keys = new Map(writings.map((writing) => [writing.uid, groupOf(writing)]));
  const same = new Map();
  const first = (key) => (same.has(key) ? first(same.get(key)) : key);
  for (const writing of writings) {
    const mine = first(groupOf(writing));
    for (const key of (writing.beside ?? []).map((uid) => keys.get(uid)).filter(Boolean)) {
      if (first(key) !== mine) same.set(first(key), mine);
    }
  }
  return first;
}

function lastWaiting(versions) {
  return latest(versions.filter((one) => one.state === "waiting"), (one) => one.seq);
}

/* A refused one stays on the screen to be mended, unless something was written over what it was written over. */
function placedOrRefused(versions) {
  const placed = versions.filter((one) => one.state === "sent" || one.state === "other");
  const now = placed.find((one) => one.shows) ?? latest(placed, (one) => one.placed_at ?? "");
  const refused = latest(versions.filter((one) => one.state === "refused"), (one) => one.seq);
  const isNext = refused && (!now || refused.after === now.uid);
  return isNext ? refused : now;
}

function latest(rows, rank) {
  return rows.reduce((best, one) => (!best || isLater(one, best, rank) ? one : best), null);
}

function isLater(one, other, rank) {
  const [mine, its] = [rank(one), rank(other)];
  return mine === its ? one.uid > other.uid : mine > its;
}
