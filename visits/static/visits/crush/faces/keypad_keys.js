/* The keys: ten figures, and behind "Letters" the alphabet for numbers like A12. */

import { html } from "../../../trimops/lib/lit-html.js";

const FIGURES = ["1", "2", "3", "4", "5", "6", "7", "8", "9"];
const LETTERS = [..."ABCDEFGHIJKLMNOPQRSTUVWXYZ"];

/**
 * @param {{isLetters: boolean}} pad
 * @param {{press: (sign: string) => void, rub: () => void, turn: () => void, stayPut: (event: Event) => void}} acts
 */
export function keys(pad, acts) {
  return pad.isLetters ? letters(acts) : figures(acts);
}

function figures(acts) {
  return html`<div class="k-keys" role="group" aria-label="Keys">
    ${FIGURES.map((sign) => key(sign, acts))}
    <button type="button" class="k-word" @mousedown=${acts.stayPut} @click=${acts.turn}>Letters</button>
    ${key("0", acts)}
    <button type="button" class="k-word" @mousedown=${acts.stayPut} @click=${acts.rub}>Rub out</button>
  </div>`;
}

function letters(acts) {
  return html`<div class="k-keys k-letters" role="group" aria-label="Letters">
    ${LETTERS.map((sign) => key(sign, acts))}
    <button type="button" class="k-word k-wide" @mousedown=${acts.stayPut} @click=${acts.turn}>Figures</button>
  </div>`;
}

function key(sign, acts) {
  return html`<button type="button" @mousedown=${acts.stayPut} @click=${() => acts.press(sign)}>${sign}</button>`;
}
