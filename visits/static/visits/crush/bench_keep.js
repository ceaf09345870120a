/* Keeping what is not a cow: a wash-down, a correction of the kit, the sign-off. Store first, then the screen. */

import { addWriting } from "./store.js";
import { uuid7 } from "./uuid7.js";

let lastWork = Promise.resolve();

/**
 * Do one thing after the other: a second tap reckons with what the first one kept.
 * @param {object} app
 * @param {() => Promise<void>} work
 * @returns {Promise<void>}
 */
export function inTurn(app, work) {
  lastWork = lastWork.then(work).catch((fault) => {
    app.say(`Not kept: this phone could not write it down (${fault?.message ?? fault}). Try again.`, "urgent");
    document.querySelector(".said")?.scrollIntoView({ block: "center" }); // the thumb may be far below it
  });
  return lastWork;
}

/**
 * Keep one version of one thing on the phone, then show it.
 * @param {object} app
 * @param {{kind: string, content: object, on?: object|null, isGone?: boolean}} thing `on` is the version on the
 *   screen that this one follows, or the refused one that it stands in for
 */
export async function keepThing(app, { kind, content, on = null, isGone = false }) {
  const mends = on?.state === "refused" ? on.uid : undefined;
  const kept = await addWriting({
    visit: app.visit,
    kind,
    record: on?.record ?? uuid7(),
    after: mends ? on.after : (on?.uid ?? null),
    is_gone: isGone,
    content,
    cowKey: null,
    mends,
  });
  await app.reload();
  app.tick();
  return kept;
}

/**
 * Versions of that kind which the server did not take.
 * @param {object} app
 * @param {string} kind
 * @returns {object[]}
 */
export function refusedOf(app, kind) {
  return app.kept.writings.filter((writing) => writing.kind === kind && writing.state === "refused");
}

/**
 * What shows now of that kind and was not refused, oldest first.
 * @param {object} app
 * @param {string} kind
 * @returns {object[]}
 */
export function shownOfKind(app, kind) {
  const found = [...app.shown.values()].filter((writing) => writing.kind === kind && writing.state !== "refused");
  return found.sort((a, b) => moment(a) - moment(b));
}

/* By the server's clock once it has said so: another phone's own may be wrong by hours. */
function moment({ placed_at, made_at }) {
  return Date.parse(placed_at ?? made_at);
}
