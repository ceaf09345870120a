/* The crush page: loads what this phone keeps of the visit, shows the face that the address names, and takes taps.
 *
 * Order of a tap that puts something down: store (complete on the phone), then the screen, then the network.
 */
import { html, render } from "../../trimops/lib/lit-html.js";
import { startDay } from "./day.js";
import { cowActs } from "./cow_acts.js";
import { ignoreBounces } from "./bounce.js";
import { statusLine } from "./status_line.js";
import { tick } from "./tick.js";
import { startWatch } from "./watch.js";
import { watchBox } from "./watch_box.js";
import { FACES, faceOf, placeOf } from "./places.js";

const root = document.getElementById("app");
let isStarted = false;
const app = {
  visit: visitOfAddress(),
  papers: null,
  kept: null,
  shown: new Map(),
  status: { waiting: 0, refused: 0, is_sending: false, trouble: "", sent_at: null },
  place: placeOf(location.hash),
  message: null,
  asked: null,
  chosen: null,
  isNewer: false,
  watch: null,
  go,
  redraw,
  say,
  tick: () => tick(app.kept?.phone),
};
Object.assign(app, cowActs(app));

function visitOfAddress() {
  const found = location.pathname.match(/\/visits\/(\d+)\/crush\//);
  return found ? Number(found[1]) : null;
}

/** Show another face; the browser's own way back leads here again. */
function go(hash) {
  if (location.hash === hash) return redraw();
  location.hash = hash;
  return undefined;
}

/** A word to the trimmer, read out too; it stays until the next one or the next face. */
function say(text, kind = "done") {
  app.message = text ? { text, kind } : null;
  redraw();
}

function redraw() {
  if (!isStarted) root.replaceChildren(); // the words that stood there until the page had opened
  isStarted = true;
  const face = faceOf(app);
  render(
    html`${statusLine(app)}${watchBox(app)}
      <main id="main" class=${`face face-${face}`} tabindex="-1">
        <div class="said" role="status">${app.message ? html`<p class=${`said-${app.message.kind}`}>${app.message.text}</p>` : ""}</div>
        ${FACES[face](app)}
      </main>`,
    root,
  );
  document.title = `${root.querySelector("h1")?.textContent.trim() ?? "Crush"} – trimops`;
}

window.addEventListener("hashchange", arrive);

/** Another face: a cow that is named there and not in the crush yet is put into it. */
async function arrive() {
  await app.dropUnchanged(app.place.cowKey, placeOf(location.hash).cowKey);
  app.place = placeOf(location.hash);
  app.chosen = null;
  app.message = app.keptMessage ?? null;
  app.keptMessage = null;
  await app.openNamed();
  redraw();
  window.scrollTo(0, 0);
  root.querySelector("main")?.focus({ preventScroll: true });
}

window.addEventListener("crush-over", redraw);
ignoreBounces();

if (app.visit !== null) app.watcher = startWatch(app);
startDay(app).then(app.dropLookedAt).then(app.openNamed).then(redraw).then(() => app.watcher?.beat(), (fault) => {
  app.trouble = String(fault?.message ?? fault);
  redraw();
});
