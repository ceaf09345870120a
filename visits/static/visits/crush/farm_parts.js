/* Pieces that the start check and the farm's own screen share. */

import { html, nothing } from "../../trimops/lib/lit-html.js";

/** Levels from which boots, knives and order of work need a second thought. */
const MIND_FROM = 2;

/**
 * The hygiene level with its reason, and what the farm asks for at its gate.
 * @param {object} farm as in the papers
 */
export function hygieneWords(farm) {
  const kind = farm.hygiene_level >= MIND_FROM ? "due" : "plain";
  const why = farm.hygiene_reason ? html` <span>${farm.hygiene_reason}</span>` : nothing;
  const asks = farm.wash_rule ? html`<p>The farm asks: ${farm.wash_rule}</p>` : nothing;
  return html`<p><span class="mark mark-${kind}">Hygiene: ${farm.hygiene_label}</span>${why}</p>${asks}`;
}

/**
 * Everybody of the farm who can be rung, each a line as big as a thumb.
 * @param {object} farm
 * @param {string} heading
 */
export function peopleToRing(farm, heading) {
  const people = farm.contacts.filter((person) => person.phone);
  const silent = farm.contacts.filter((person) => !person.phone);
  const lines = [
    ...people.map((person) => ringLine(person.name, person.part, person.phone)),
    ...(farm.phone ? [ringLine(farm.name, "the farm's own number", farm.phone)] : []),
  ];
  return html`<h2>${heading}</h2>
    ${lines.length
      ? html`<ul class="ring">${lines}</ul>`
      : html`<p>No telephone number is kept for this farm. Ask the office before you set off.</p>`}
    ${silent.length ? html`<p class="quiet">Without a number: ${silent.map(nameAndPart).join(", ")}.</p>` : nothing}`;
}

/**
 * What a telephone dials: figures and a leading plus.
 * @param {string} phone as written
 * @returns {string} "tel:+441234567890"
 */
export function telAddress(phone) {
  const plain = phone.replace(/\(0\)/g, "");
  return `tel:${plain.trim().startsWith("+") ? "+" : ""}${plain.replace(/\D/g, "")}`;
}

function ringLine(name, part, phone) {
  return html`<li><a class="act ring-line" href=${telAddress(phone)}><span>${name}${part ? `, ${part}` : ""}</span> <b>${phone}</b></a></li>`;
}

function nameAndPart(person) {
  return person.part ? `${person.name} (${person.part})` : person.name;
}
