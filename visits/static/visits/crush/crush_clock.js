/* How long she has stood in the crush, and the belly band with its caution (T13). The clock ticks by itself. */
import { html } from "../../trimops/lib/lit-html.js";

let timer = null;

/** The running time; a caution once it passes the business's own mark. (The words are a property: the ticking writes them
 * too, and would tear out a text that lit-html looks after.) */
export function crushClock(app, draft) {
  if (!draft.started_at) return "";
  timer ??= setInterval(tickAll, 1000);
  const limit = app.papers.figures.trim.belly_band_minutes;
  return html`<p class="crush-clock" data-since=${draft.started_at} data-limit=${limit}
    data-band=${draft.band_since ?? ""} .textContent=${words(draft.started_at)}></p>
    <p class="crush-caution" ?hidden=${!isOver(draft, limit)} role="alert">${isOver(draft, limit) ? caution(app, draft) : ""}</p>`;
}

function isOver(draft, limit) {
  return minutesSince(draft.band_since ?? draft.started_at) >= limit;
}

function caution(app, draft) {
  const what = draft.band_since ? "The belly band has been on" : "She has stood in the crush";
  return `${what} ${minutesSince(draft.band_since ?? draft.started_at)} min. ${app.papers.cautions.belly_band}`;
}

/** On: the band went on now. Off: the minutes are put down. */
export function bandButton(app, cowKey, draft) {
  const minutes = draft.content.entry.belly_band_minutes;
  const press = () => app.change(cowKey, (now) => (now.band_since ? bandOff(now) : bandOn(now)));
  const word = draft.band_since ? "Belly band is on: off" : minutes === null ? "Belly band on" : `Belly band ${minutes} min`;
  return html`<button class="key" aria-pressed=${String(Boolean(draft.band_since))} @click=${press}>${word}</button>`;
}

function bandOn(draft) {
  return { ...draft, band_since: new Date().toISOString() };
}

/** The draft with the band off and its minutes added up; also used when she is kept with the band still on. */
export function bandOff(draft) {
  if (!draft.band_since) return draft;
  const { entry } = draft.content;
  const minutes = Math.min(240, (entry.belly_band_minutes ?? 0) + Math.max(1, Math.round(minutesExact(draft.band_since))));
  return { ...draft, band_since: null, content: { ...draft.content, entry: { ...entry, belly_band_minutes: minutes } } };
}

function tickAll() {
  const clock = document.querySelector(".crush-clock");
  if (!clock) {
    clearInterval(timer);
    timer = null;
    return;
  }
  clock.textContent = words(clock.dataset.since);
  const since = clock.dataset.band || clock.dataset.since;
  const caution = document.querySelector(".crush-caution");
  if (caution?.hidden && minutesSince(since) >= Number(clock.dataset.limit)) dispatchEvent(new Event("crush-over"));
}

function words(since) {
  const seconds = Math.max(0, Math.floor((Date.now() - Date.parse(since)) / 1000));
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")} in the crush`;
}

function minutesExact(since) {
  return Math.max(0, (Date.now() - Date.parse(since)) / 60000);
}

function minutesSince(since) {
  return Math.floor(minutesExact(since));
}
