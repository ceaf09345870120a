/* How the draft of a cow begins, and whether anything would be lost with it. Writes nothing. */
import { emptyEntry, FEET } from "./entry.js";
import { groupOf, officeKey } from "./shown.js";
import { uuid7 } from "./uuid7.js";

/** What stands of her today, by the key that a phone or the office gave her; null for nothing. */
export function standingOf(app, cowKey) {
  const isHers = (one) => one.kind === "cow" && [one.cowKey, groupOf(one), officeKey(one)].includes(cowKey);
  return app.shown.get(cowKey) ?? [...app.shown.values()].find(isHers) ?? null;
}

/** One that the office refused is mended in place of itself: the office never had it to be edited from. */
export function draftToMend(writing) {
  const { record, uid, content } = writing;
  const stands = writing.state === "refused" ? { after: writing.after, mends: uid } : { after: uid, mends: null };
  return { record, ...stands, started_at: null, rest: [], content };
}

/** A cow who has just come into the crush. `who`: {known, cow} as `app.cowOf` gives it. */
export function newDraft(app, who) {
  const content = { cow: who.cow, told_vet: "", entry: emptyEntry() };
  return { record: uuid7(), after: null, mends: null, started_at: new Date().toISOString(), rest: restFor(app, who.known), content };
}

/** A cow that comes only to have one foot looked at again keeps the others on the ground. */
function restFor(app, known) {
  const isOnlySeenAgain = known && known.rechecks.length > 0 && !known.is_lame && known.why.length <= known.rechecks.length;
  return isOnlySeenAgain ? [] : FEET.slice(0, app.papers.figures.trim.feet_lifted);
}

/** A cow of the day that was opened and not changed: the version that she was opened from still says all of it. */
export function isOnlyLookedAt(app, draft) {
  const from = sourceOf(app, draft);
  return Boolean(from) && !draft.band_since && draft.rest.length === 0 && isSame(draft.content, from.content);
}

/** Has the trimmer put down anything that goes when the draft goes? */
export function isWorthAsking(app, draft) {
  if (draft.band_since || picturesOf(app, draft).length > 0) return true;
  const from = sourceOf(app, draft);
  if (from) return !isOnlyLookedAt(app, draft);
  return draft.content.told_vet !== "" || !isSame(draft.content.entry, emptyEntry());
}

/** Pictures on this phone of a cow who was never put down: they go with her. */
export function picturesOf(app, draft) {
  if (app.kept.writings.some((one) => one.record === draft.record)) return [];
  return app.kept.photos.filter((note) => note.record === draft.record && note.state !== "sent");
}

function sourceOf(app, draft) {
  const uid = draft.mends ?? draft.after;
  return uid ? (app.kept.writings.find((one) => one.uid === uid) ?? null) : null;
}

/* The office gives the same words back with its keys in another order. */
function isSame(one, other) {
  return JSON.stringify(one, inOrder) === JSON.stringify(other, inOrder);
}

function inOrder(key, value) {
  if (value === null || typeof value !== "object" || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1)));
}
