/* What the server did not take: opened for mending, or thrown away. It is on this phone until one of the two. */

import { dropPhoto, dropRefused, putDraft } from "./store.js";

const FACES = { wash: "#/wash", kit: "#/kit", blade: "#/knives", sign_off: "#/sign-off" };

/**
 * Open what was refused so that it can be put right. The writing made from it takes its place.
 * @param {object} app
 * @param {object} writing refused
 */
export async function mend(app, writing) {
  if (writing.kind !== "cow") return app.go(FACES[writing.kind]);
  const { record, after, uid, content, cowKey } = writing;
  if (app.kept.drafts.get(cowKey)?.mends !== uid) {
    await putDraft(app.visit, cowKey, { record, after, mends: uid, started_at: null, rest: [], content });
    await app.reload();
  }
  return app.go(`#/cow/${cowKey}`);
}

/** Open a cow of the day for changing: one that was refused for mending. */
export function openAgain(app, cowKey) {
  const standing = app.shown.get(cowKey);
  return standing?.state === "refused" ? mend(app, standing) : app.openCow(cowKey);
}

/** Throw a refused writing or photo away for good, with the mending begun of it. */
export async function throwAway(app, one) {
  if (!one.kind) return dropPhoto(one.uid);
  if (app.kept.drafts.get(one.cowKey)?.mends === one.uid) await putDraft(app.visit, one.cowKey, null);
  return dropRefused(one.uid);
}
