/* The form of a wash-down: its values, what is to be mended in them, and its fields. */

import { html, nothing } from "../../trimops/lib/lit-html.js";
import { shownOfKind } from "./bench_keep.js";
import { bucketWords } from "./dilution.js";
import { washMaterial } from "./rules.js";
import { TRIED, TRIED_SECONDS, WASH_CAUTIONS } from "./substances.js";

const BUCKETS = [5, 10, 20];
const MOST_MINUTES = 1440;
const MOST_LITRES = 9999;
const A_MOMENT_MS = 5 * 60 * 1000; // clocks and thumbs: five minutes ahead is still now

/**
 * The disinfectants among the kit.
 * @param {object} papers
 * @returns {object[]} consumables
 */
export function disinfectants(papers) {
  return papers.consumables.filter((item) => item.kind === "disinfectant");
}

/**
 * What was used last: on this visit, else on the visit before it on this phone. What is no longer carried is not named.
 * @param {object} app
 * @returns {object|null} content of a wash-down
 */
export function lastWash(app) {
  const last = shownOfKind(app, "wash").at(-1)?.content ?? app.kept.phone.last_wash ?? null;
  const isCarried = disinfectants(app.papers).some((item) => item.id === last?.consumable);
  return last && !isCarried ? { ...last, consumable: null } : last;
}

/**
 * A form that offers what was used last, now.
 * @param {object|null} last content of a wash-down
 */
export function emptyWash(last) {
  const { substance = "", dilution = "", contact_minutes = "", consumable = null, litres = null } = last ?? {};
  return { on: null, substance, dilution, contact_minutes, at: "", consumable, litres: litres ?? "10" };
}

/** The form filled from the label of what is picked; picked once more, it is let go of. */
export function pickProduct(form, item) {
  if (form.consumable === item.id) return { ...form, consumable: null };
  const { active_substance: substance, dilution, contact_minutes: minutes } = item;
  return {
    ...form,
    consumable: item.id,
    substance: substance || item.name,
    dilution: dilution || form.dilution,
    contact_minutes: minutes ?? form.contact_minutes,
  };
}

/** The form filled from one that was kept, or was refused. */
export function washOf(wash) {
  return { ...emptyWash(wash.content), on: wash, at: localMoment(wash.content.washed_at) };
}

/** What the form says, as it is sent. */
export function washContent(form, now = new Date()) {
  const at = form.at ? new Date(form.at) : now;
  const { consumable = null } = form;
  return {
    substance: form.substance.trim(),
    dilution: form.dilution.trim(),
    contact_minutes: String(minutes(form)),
    washed_at: at.toISOString(),
    consumable,
    // Ten litres stand there to reckon with; of a product that is not ours they say nothing.
    litres: consumable ? String(tenths(form.litres)) : null,
  };
}

/**
 * What is to be mended, by field; empty when the form may be kept.
 * @returns {Record<string, string>}
 */
export function faultsOf(form, now = new Date()) {
  const faults = {};
  if (!form.substance.trim()) faults.substance = "Name the active substance, as on the label.";
  if (!form.dilution.trim()) faults.dilution = "Say how strong: 1:100, or 2 % w/v.";
  if (!(minutes(form) > 0 && minutes(form) <= MOST_MINUTES)) {
    faults.contact_minutes = "Give the minutes that it stayed on, more than 0.";
  }
  const litres = tenths(form.litres);
  if (form.consumable && !(litres >= 0.1 && litres <= MOST_LITRES)) {
    faults.litres = "Say how many litres were mixed, so that it comes off the stock.";
  }
  if (form.at && !(new Date(form.at) - now <= A_MOMENT_MS)) faults.at = "Give a day and hour that have been.";
  return faults;
}

/** A glove that tapped twice washed down once: the same product within a few minutes. */
export function isSameWash(one, other) {
  const names = ["substance", "dilution", "contact_minutes", "consumable", "litres"];
  const alike = names.every((name) => (one[name] ?? null) === (other[name] ?? null));
  return alike && Math.abs(new Date(one.washed_at) - new Date(other.washed_at)) < A_MOMENT_MS;
}

/* Tenths of a minute are kept; 20 seconds are 0.3. */
function minutes(form) {
  return tenths(form.contact_minutes);
}

function tenths(text) {
  return Math.round(Number(text.replace(",", ".") || NaN) * 10) / 10;
}

function localMoment(iso) {
  const at = new Date(iso);
  return new Date(at - at.getTimezoneOffset() * 60000).toISOString().slice(0, 16);
}

/** The fields. `keep` and `leave` are called by the buttons. */
export function washForm({ form, app, keep, leave }) {
  const set = (name, value) => {
    form[name] = value;
    app.redraw();
  };
  const put = (event) => {
    event.preventDefault();
    keep();
  };
  return html`<form class="bench-form" @submit=${put} novalidate>
    <h2>${form.on ? "Change this wash-down" : "Note a wash-down"}</h2>
    ${products(form, app)}
    ${field(form, set, "substance", "Active substance", { longest: 80, help: "What it says on the label, not the name of the product." })}
    ${choices(form, set, "substance", TRIED.map((tried) => tried.substance))}
    ${field(form, set, "dilution", "How strong", { longest: 40, help: "1:100, 2 % w/v …" })}
    ${field(form, set, "contact_minutes", "Minutes it stayed on", { mode: "decimal", short: true })}
    ${field(form, set, "at", "When", { type: "datetime-local", help: "Left empty: now." })}
    <fieldset class="bucket"><legend>For the bucket</legend>
      ${field(form, set, "litres", "Litres in the bucket", { mode: "decimal", short: true })}
      ${choices(form, set, "litres", BUCKETS.map(String), (litres) => `${litres} l`)}
      <p class="bucket-needs" role="status">${bucketWords(form.dilution, tenths(form.litres), pickedOf(form, app)?.unit)}</p>
      ${offTheStock(form, app)}
    </fieldset>
    ${WASH_CAUTIONS.map((text) => html`<p>${text}</p>`)}
    <div class="actions">
      <button class="act-main">${form.on ? "Keep the change" : "Keep this wash-down"}</button>
      ${form.on ? html`<button type="button" @click=${leave}>Leave it as it was</button>` : nothing}
    </div>
    ${tried(form, app)}
  </form>`;
}

function field(form, set, name, label, { help = "", type = "text", mode = "text", short = false, longest = 20 } = {}) {
  const id = `wash-${name}`;
  const fault = form.faults[name];
  const told = [help && `${id}-help`, fault && `${id}-fault`].filter(Boolean).join(" ");
  return html`<div class="field ${short ? "short" : ""} ${fault ? "field-wrong" : ""}">
    <label for=${id}>${label}</label>
    ${help ? html`<p class="help" id="${id}-help">${help}</p>` : nothing}
    ${fault ? html`<ul class="errorlist" id="${id}-fault"><li>${fault}</li></ul>` : nothing}
    <input id=${id} type=${type} maxlength=${longest} inputmode=${mode} autocomplete="off" .value=${form[name]}
      aria-describedby=${told || nothing} aria-invalid=${fault ? "true" : nothing}
      @input=${(event) => set(name, event.target.value)}>
  </div>`;
}

/* One tap on what the van carries fills in its label. */
function products(form, app) {
  const items = disinfectants(app.papers);
  if (!items.length) return nothing;
  const pick = (item) => {
    Object.assign(form, pickProduct(form, item));
    app.redraw();
  };
  return html`<div class="choices" role="group" aria-label="From your kit"><p class="choices-word">From your kit</p>${items.map(
    (item) => html`<button type="button" class="key" aria-pressed=${form.consumable === item.id ? "true" : "false"}
      @click=${() => pick(item)}>${item.name}</button>`,
  )}</div>`;
}

function pickedOf(form, app) {
  return disinfectants(app.papers).find((item) => item.id === form.consumable) ?? null;
}

function offTheStock(form, app) {
  const item = pickedOf(form, app);
  if (!item) return nothing;
  const litres = String(tenths(form.litres) || "");
  if (!washMaterial({ ...form, litres }, app.papers)) {
    return html`<p class="quiet">It does not come off the stock: its amount in ${item.unit} cannot be told from that.</p>`;
  }
  return html`<p class="quiet">It comes off the stock of ${item.name}.</p>`;
}

function choices(form, set, name, values, words = (value) => value) {
  return html`<div class="choices">${values.map((value) => html`<button type="button" class="key"
    aria-pressed=${form[name] === value ? "true" : "false"} @click=${() => set(name, value)}>${words(value)}</button>`)}</div>`;
}

function tried(form, app) {
  const fill = (one) => {
    Object.assign(form, one);
    app.redraw();
    document.getElementById("wash-contact_minutes")?.focus();
  };
  return html`<details>
    <summary>What was tried in a laboratory</summary>
    <p>${TRIED_SECONDS} seconds in each of these left no live treponemes of digital dermatitis on clean knives
      (Gillespie, Carter, Blowey and Evans, Veterinary Record 2019/20). Two other products did less.</p>
    <ul class="bench-list">${TRIED.map((one) => html`<li><p><b>${one.substance}</b> ${one.dilution}</p>
      <button type="button" aria-label="Fill in ${one.substance} ${one.dilution}" @click=${() => fill(one)}>Fill in</button></li>`)}</ul>
    <p>A laboratory is not a yard: dirt off first, and the label and local rules decide.</p>
  </details>`;
}
