/* A meaning in three ways at once: a hue, a shape and a word (the classes are those of trimops.css). */

import { html } from "../../../trimops/lib/lit-html.js";

/** @param {{kind: "done"|"due"|"urgent"|"planned"|"plain", word: string}} meaning */
export function mark({ kind, word }) {
  return html`<span class=${`mark mark-${kind}`}>${word}</span>`;
}
