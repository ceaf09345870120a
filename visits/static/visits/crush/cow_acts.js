/* What a tap does to the cow in the crush: each change is on the phone's disk before the screen shows it.
 *
 * A draft is {record, after, mends, started_at, rest, content}: `content` is what a writing of kind "cow" carries,
 * `rest` names the feet that are taken for trimmed unless something else is put down on them.
 */
import { finished } from "./cow_content.js";
import { draftToMend, isOnlyLookedAt, isWorthAsking, newDraft, picturesOf, standingOf } from "./cow_drafts.js";
import { doubts, refusals } from "./rules.js";
import { addWriting, letGoDraft, putDraft } from "./store.js";

/** The acts that the faces find on `app`. */
export function cowActs(app) {
  const ahead = new Map(); // drafts as the taps left them, while the store still writes
  const closing = new Set(); // cows that are being kept or let go: what is tapped meanwhile comes too late
  return {
    isBegun: () => Boolean(app.kept?.phone.begun || app.papers?.visit.started_at),
    cowOf: (cowKey) => cowOf(app, cowKey),
    draftOf: (cowKey) => app.kept.drafts.get(cowKey) ?? null,
    openCow: (cowKey, cow) => openCow(app, ahead, cowKey, cow),
    openNamed: () => openNamed(app, ahead),
    keepUp: () => keepUp(app, ahead),
    dropLookedAt: () => dropLookedAt(app),
    dropUnchanged: (cowKey, nextKey) => dropUnchanged(app, ahead, cowKey, nextKey),
    change: (cowKey, change) => closing.has(cowKey) || changeDraft(app, ahead, cowKey, change),
    changeEntry: (cowKey, change) => app.change(cowKey, (draft) => withEntry(draft, change(draft.content.entry))),
    saveCow: (cowKey, extra, isSure) => once(closing, cowKey, () => saveCow(app, ahead, cowKey, { extra, isSure })),
    leaveCow: (cowKey, isSure) => once(closing, cowKey, () => leaveCow(app, ahead, cowKey, isSure)),
  };
}

function withEntry(draft, entry) {
  return { ...draft, content: { ...draft.content, entry } };
}

/** Two taps on the same button are one: the second finds the first still at work. */
async function once(closing, cowKey, work) {
  if (closing.has(cowKey)) return;
  closing.add(cowKey);
  try {
    await work();
  } finally {
    closing.delete(cowKey);
  }
}

/** {cowKey, number, known: the cow of the papers or null, cow: her part of a writing's content}; null for nobody. */
export function cowOf(app, cowKey) {
  const known = app.papers.cows.find((cow) => `c${cow.id}` === cowKey) ?? null;
  if (known) return { cowKey, number: known.number, known, cow: { id: known.id } };
  const written = app.kept.writings.find((one) => one.cowKey === cowKey && one.content?.cow?.new);
  const cow = (app.kept.drafts.get(cowKey) ?? written)?.content.cow;
  return cow?.new ? { cowKey, number: cow.new.number, known: null, cow } : null;
}

/** Put a cow into the crush: her draft, what stands of her today, or a new one. `cow` where she is new here. */
async function openCow(app, ahead, wanted, cow = null) {
  const cowKey = standingOf(app, wanted)?.cowKey ?? wanted;
  if (!(await begin(app, ahead, cowKey, cow))) return;
  app.tick();
  app.go(`#/cow/${cowKey}`);
}

/**
 * The cow that the address names, opened if she was put down today. One who was not is put into the crush by a tap, not
 * by the way back.
 */
async function openNamed(app, ahead) {
  const { cowKey } = app.place;
  const isThere = cowKey && app.papers && app.isBegun() && cowOf(app, cowKey);
  const standing = isThere && standingOf(app, cowKey);
  if (!standing) return;
  // Added here and sent: the papers have her by another key by now, and she must not be put down anew under that.
  if (standing.cowKey !== cowKey) location.replace(location.hash.replace(cowKey, standing.cowKey));
  else await begin(app, ahead, cowKey, null);
}

async function begin(app, ahead, cowKey, cow) {
  const draft = app.kept.drafts.get(cowKey);
  const standing = standingOf(app, cowKey);
  const isOld = draft && standing && isOnlyLookedAt(app, draft) && (draft.mends ?? draft.after) !== standing.uid;
  if (draft && !isOld) return true;
  const who = cowOf(app, cowKey) ?? { cow, known: null };
  return keep(app, ahead, cowKey, standing ? draftToMend(standing) : newDraft(app, who));
}

/** Another phone wrote of the cow on the screen: if she is only looked at here, what it wrote is what is seen. */
async function keepUp(app, ahead) {
  if (app.kept.drafts.has(app.place.cowKey)) await openNamed(app, ahead);
}

/** A cow of the day that was only looked at leaves no draft behind. */
async function dropUnchanged(app, ahead, cowKey, nextKey) {
  const draft = cowKey && cowKey !== nextKey ? app.kept?.drafts.get(cowKey) : null;
  if (!draft || ahead.has(cowKey) || !isOnlyLookedAt(app, draft)) return;
  await putDraft(app.visit, cowKey, null).catch(() => undefined); // it does no harm there
  app.kept.drafts.delete(cowKey);
}

/** Looked at when the page was closed: such a draft is in nobody's list, and must not hold up a sign-out. */
async function dropLookedAt(app) {
  const looked = [...app.kept.drafts].filter(([key, draft]) => key !== app.place.cowKey && isOnlyLookedAt(app, draft));
  for (const [cowKey] of looked) {
    await putDraft(app.visit, cowKey, null).catch(() => undefined); // it does no harm there
    app.kept.drafts.delete(cowKey);
  }
}

async function changeDraft(app, ahead, cowKey, change) {
  const draft = ahead.get(cowKey) ?? app.kept.drafts.get(cowKey);
  if (!draft) return;
  const before = app.asked;
  if (!(await keep(app, ahead, cowKey, change(draft)))) return;
  // What was asked before this change is asked of another cow now; what was asked since knows of it already.
  if (app.asked === before) app.asked = null;
  app.tick();
  app.redraw();
}

/** Store the draft, then let the faces see it. Later taps build on it at once, in the order they came. */
async function keep(app, ahead, cowKey, draft) {
  ahead.set(cowKey, draft);
  try {
    await putDraft(app.visit, cowKey, draft);
  } catch (fault) {
    ahead.delete(cowKey);
    app.say(`Not noted: this phone could not write it down (${fault.message}). What was there before still stands.`, "urgent");
    return false;
  }
  if (ahead.get(cowKey) === draft) ahead.delete(cowKey);
  app.kept.drafts.set(cowKey, draft);
  return true;
}

/** A question is not answered by the same press that raised it. */
const NO_ANSWER_MS = 700;

/**
 * Write the cow down. What contradicts itself is said and not written; what looks odd is asked once.
 * `extra(draft)` changes the draft first (the one-tap buttons); `isSure`: what was asked is answered.
 */
async function saveCow(app, ahead, cowKey, { extra = null, isSure = false }) {
  const draft = ahead.get(cowKey) ?? app.kept.drafts.get(cowKey);
  if (!draft) return;
  const changed = extra ? { ...draft, ...extra(draft) } : draft;
  const content = finished(changed);
  const faults = refusals(content.entry, app.papers);
  if (faults.length) return ask(app, { cowKey, faults, odd: [] });
  const odd = doubts(content.entry, app.papers);
  if (odd.length && !isAnswered(app.asked, cowKey, odd, isSure)) return ask(app, { cowKey, faults: [], odd, extra });
  try {
    await addWriting({
      visit: app.visit, kind: "cow", record: draft.record, after: draft.after, is_gone: false, content, cowKey,
      mends: draft.mends ?? undefined,
    });
  } catch (fault) {
    return app.say(`Not noted: this phone could not write it down (${fault.message}). What you tapped still stands here.`, "urgent");
  }
  ahead.delete(cowKey);
  app.asked = null;
  await app.reload();
  app.tick();
  app.keptMessage = { text: `Cow ${cowOf(app, cowKey)?.number ?? ""} is noted.`, kind: "done" };
  return app.go("#/");
}

/* Just these doubts were asked about, and long enough ago for somebody to have read them. */
function isAnswered(asked, cowKey, odd, isSure) {
  if (asked?.cowKey !== cowKey || JSON.stringify(asked.odd) !== JSON.stringify(odd)) return false;
  return isSure || performance.now() - asked.at > NO_ANSWER_MS;
}

function ask(app, question) {
  app.asked = { at: performance.now(), ...question };
  app.redraw();
  document.querySelector(".asked-box")?.focus();
}

/** Let her go as she came: nothing of the draft is kept. Asked first where something was put down. */
async function leaveCow(app, ahead, cowKey, isSure = false) {
  const draft = ahead.get(cowKey) ?? app.kept.drafts.get(cowKey);
  if (draft && !isSure && isWorthAsking(app, draft)) {
    return ask(app, { cowKey, faults: [], odd: [], leaves: { pictures: picturesOf(app, draft).length } });
  }
  try {
    await letGoDraft(app.visit, cowKey);
  } catch (fault) {
    return app.say(`She is still here: this phone could not let her go (${fault.message}).`, "urgent");
  }
  ahead.delete(cowKey);
  app.asked = null;
  await app.reload();
  return app.go("#/");
}
