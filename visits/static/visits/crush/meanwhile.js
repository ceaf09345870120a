/* Said on the face of a cow who is open here while another phone put her down, or took her back. */
import { html } from "../../trimops/lib/lit-html.js";
import { cowLine, whoPut } from "./said_words.js";
import { groupOf } from "./shown.js";
import { whenPut } from "./day_list.js";
import { clock } from "./when.js";

/** @param {object} app @param {string} cowKey @param {object} draft */
export function meanwhile(app, cowKey, draft) {
  const theirs = theirLast(app, cowKey, draft);
  if (!theirs) return "";
  const at = clock(whenPut(theirs), app.papers.visit.zone);
  const did = theirs.is_gone ? "took her back" : draft.after ? "changed her" : "put her down too";
  const words = theirs.is_gone ? "" : `: ${cowLine(theirs.content.entry, app.papers)}`;
  return html`<p class="said-due meanwhile" role="status"><strong>Another phone ${did}</strong> (${whoPut(theirs, app.papers)}, ${at})${words}.
    What you keep here will show; theirs stays beside it.</p>`;
}

/* What shows by another phone, unless it is what she was opened from, or older than that. */
function theirLast(app, cowKey, draft) {
  const { writings } = app.kept;
  const isHers = (one) => one.cowKey === cowKey || groupOf(one) === cowKey;
  const theirs = writings.find((one) => one.kind === "cow" && one.state === "other" && one.shows && isHers(one));
  return theirs && !isSeen(writings, draft.after, theirs.uid) ? theirs : null;
}

function isSeen(writings, from, uid) {
  const byUid = new Map(writings.map((one) => [one.uid, one]));
  const seen = new Set();
  for (let at = from; at && !seen.has(at); at = byUid.get(at)?.after) seen.add(at);
  return seen.has(uid);
}
