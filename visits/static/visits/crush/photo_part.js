/* Pictures of a cow or of one foot: taken, scaled on the phone, kept like everything else. */
import { html } from "../../trimops/lib/lit-html.js";
import { addPhoto, dropPhoto, pictureOf } from "./store.js";
import { smallPhoto } from "./photo_size.js";

const seen = new Map(); // uid -> address of the picture in this page

export function photoPart(app, record, foot) {
  const notes = app.kept.photos.filter((note) => note.record === record && note.foot === foot);
  return html`<div class="photos">
    ${notes.map((note) => picture(app, note))}
    <label class="key photo-take">Take a picture
      <input class="unseen" type="file" accept="image/*" capture="environment" @change=${(event) => take(app, record, foot, event.target)}></label>
  </div>`;
}

function picture(app, note) {
  if (!seen.has(note.uid)) load(app, note.uid);
  const address = seen.get(note.uid);
  return html`<figure>${address ? html`<img src=${address} alt="Picture taken here" width="96">` : html`<p class="quiet">Sent: it is at the office.</p>`}
    ${note.state === "sent" ? "" : html`<button class="key small" @click=${() => drop(app, note)}>Throw away</button>`}</figure>`;
}

async function load(app, uid) {
  seen.set(uid, "");
  const blob = await pictureOf(uid);
  if (!blob) return;
  seen.set(uid, URL.createObjectURL(blob));
  app.redraw();
}

async function take(app, record, foot, input) {
  const [file] = input.files;
  input.value = "";
  if (!file) return;
  try {
    await addPhoto({ visit: app.visit, record, foot, blob: await smallPhoto(file) });
  } catch (fault) {
    app.say(`The picture was not kept: ${fault.message}. Take it again, or go on without.`, "urgent");
    return;
  }
  await app.reload();
  app.tick();
  app.redraw();
}

async function drop(app, note) {
  await dropPhoto(note.uid);
  await app.reload();
  app.redraw();
}
