/* What the keypad offers for the number typed so far: who it may be, and whether somebody new may be added. */

import { apartWords, cowMark, cowsRemaining } from "./day_list.js";
import { cowsLike } from "./rules.js";
import { officeKey } from "./shown.js";

const MOST = 6;

/**
 * @param {object} app
 * @param {string} typed
 * @returns {{hits: object[], isMore: boolean, isExact: boolean}} at most six hits, exact ones first; a hit is
 *   {cowKey, number, cow (of the papers; null for one added today), mark, done: writing|null, isExact, apart: words}
 */
export function offers(app, typed) {
  const number = small(typed.trim());
  const found = number ? likeIt(app, number) : nextOnes(app);
  const marked = found.map((hit) => ({ ...hit, isExact: number !== "" && small(hit.number) === number }));
  const hits = marked.sort((one, other) => Number(other.isExact) - Number(one.isExact));
  for (const hit of hits) hit.apart = tellApart(hit, hits, number);
  return { hits: hits.slice(0, MOST), isMore: hits.length > MOST, isExact: hits.some((hit) => hit.isExact) };
}

const small = (text) => text.toLowerCase();

function likeIt(app, number) {
  const added = addedLike(app, number);
  // Once the papers were fetched anew they have her too: she stands here under the name that this phone gave her.
  const isAddedHere = (cow) =>
    added.some((hit) => hit.known === `c${cow.id}` || (!hit.known && !hit.isAnother && small(hit.number) === small(cow.number)));
  return [...added, ...known(app, cowsLike(app.papers, number).filter((cow) => !isAddedHere(cow)))];
}

/* Nothing typed yet: who is next on the list. */
function nextOnes(app) {
  return known(app, cowsRemaining(app.papers, app.shown).map(({ cow }) => cow));
}

function known(app, cows) {
  const { day } = app.papers.visit;
  return cows.map((cow) => {
    const cowKey = `c${cow.id}`;
    return { cowKey, number: cow.number, cow, mark: cowMark(cow, day), done: app.shown.get(cowKey) ?? null };
  });
}

/* Cows added at the crush today are not in the papers; the phone knows them by what it wrote. */
function addedLike(app, number) {
  const added = new Map();
  for (const one of app.shown.values()) {
    if (one.content.cow?.new) added.set(one.cowKey, { ...one.content.cow.new, known: officeKey(one) });
  }
  for (const [cowKey, draft] of app.kept.drafts) {
    if (draft.content.cow.new && !added.has(cowKey)) added.set(cowKey, draft.content.cow.new);
  }
  return [...added]
    .filter(([, cow]) => small(cow.number).startsWith(number))
    .map(([cowKey, { number: worn, is_another: isAnother, known: asKnown = null }]) => {
      return { cowKey, number: worn, cow: null, mark: null, done: app.shown.get(cowKey) ?? null, isAnother, known: asKnown };
    });
}

/* Said where two cows wear one number, and where it was a tag and not her number that fitted. */
function tellApart(hit, hits, number) {
  const alike = hits.filter((other) => small(other.number) === small(hit.number));
  if (alike.length > 1) return hit.cow ? apartWords(hit.cow) : "Added at the crush today";
  if (!hit.cow || small(hit.number).startsWith(number)) return "";
  const tag = hit.cow.ids.find((id) => small(id.value).endsWith(number));
  return tag ? `${tag.label} ${tag.value}` : "";
}
