/* One foot: the sole to tap on, what was found there, what was done about it. */
import { html } from "../../../trimops/lib/lit-html.js";
import { askedBox } from "../asked_box.js";
import { FEET, footOf, isTouched, trimmed, uncut, withFoot, withoutFoot } from "../entry.js";
import { footDone } from "../foot_done.js";
import { footMore } from "../foot_more.js";
import { meanwhile } from "../meanwhile.js";
import { placeSheet } from "../place_sheet.js";
import { sole } from "../sole.js";
import { dayWords } from "../when.js";

export function face(app) {
  const { cowKey, foot: name } = app.place;
  const cow = app.cowOf(cowKey);
  const draft = app.draftOf(cowKey);
  if (!draft) return html`<h1>Cow ${cow.number}</h1>
    <button class="act-main" @click=${() => app.openCow(cowKey)}>Put her in the crush</button>`;
  const foot = shownFoot(draft, name);
  const chosen = chosenHere(app);
  const choose = (claw, zone) => {
    app.chosen = { cowKey, foot: name, claw, zone, lesion: null };
    app.redraw();
    document.querySelector(".sheet")?.focus();
  };
  return html`
    <div class="foot-head">
      <a class="key" href=${`#/cow/${cowKey}`}>‹ ${cow.number}</a>
      <h1>${app.papers.labels.feet[name]}<span class="unseen"> foot of cow ${cow.number}</span></h1>
      <nav class="foot-tabs" aria-label="The other feet">
        ${FEET.filter((each) => each !== name).map((each) => html`<a class="key" href=${`#/cow/${cowKey}/${each}`}
          aria-label=${app.papers.labels.feet[each]}>${each}</a>`)}
      </nav>
    </div>
    ${meanwhile(app, cowKey, draft)}
    ${standingBlocks(app, cow, name, foot)}
    ${sole(foot, app.papers, chosen, choose)}
    ${footDone(app, cowKey, foot, cow)}
    <div class="row-of-three">
      ${whole(app, cowKey, name, "Trimmed", trimmed)}
      ${whole(app, cowKey, name, "No cut needed", uncut)}
      <button class="key" @click=${() => notLifted(app, cowKey, name)}>Not lifted</button>
    </div>
    ${footMore(app, cowKey, foot, draft)}
    ${askedBox(app, cowKey)}
    ${placeSheet(app, cowKey, foot, chosen)}
    ${chosen ? "" : html`<div class="bar">
      <a class="bar-second" href=${`#/cow/${cowKey}`}>The cow</a>
      <button class="bar-main" data-save="main" @click=${() => app.saveCow(cowKey)}><strong>${draft.after ? "Keep the change" : `Done with ${cow.number}`}</strong></button>
    </div>`}`;
}

/** The foot as put down; one that counts as trimmed shows its steps once something else is put down on it. */
export function shownFoot(draft, name) {
  const foot = footOf(draft.content.entry, name);
  return isTouched(foot) || !draft.rest.includes(name) ? foot : trimmed(foot);
}

/** Change the foot that is on the screen. */
export function changeFoot(app, cowKey, name, change) {
  return app.change(cowKey, (draft) => ({
    ...draft,
    content: { ...draft.content, entry: withFoot(draft.content.entry, change(shownFoot(draft, name))) },
  }));
}

function chosenHere(app) {
  const { cowKey, foot } = app.place;
  return app.chosen?.cowKey === cowKey && app.chosen.foot === foot ? app.chosen : null;
}

function whole(app, cowKey, name, word, change) {
  return html`<button class="key" @click=${() => changeFoot(app, cowKey, name, change)}>${word}</button>`;
}

function notLifted(app, cowKey, name) {
  app.chosen = null;
  return app.change(cowKey, (draft) => ({
    ...draft,
    rest: draft.rest.filter((each) => each !== name),
    content: { ...draft.content, entry: withoutFoot(draft.content.entry, name) },
  }));
}

/** Blocks that came with her: the first thing to see to on this foot. */
function standingBlocks(app, cow, name, foot) {
  const blocks = (cow.known?.blocks ?? []).filter((block) => block.foot === name);
  const { labels } = app.papers;
  return blocks.map((block) => {
    const isOff = foot.actions.some((each) => each.kind === "block_off" && each.claw === block.claw);
    const off = { kind: "block_off", claw: block.claw, block_kind: "" };
    const turn = (now) => ({
      ...now,
      actions: isOff ? now.actions.filter((each) => each.kind !== "block_off" || each.claw !== block.claw) : [...now.actions, off],
    });
    return html`<button class="key wide is-due" aria-pressed=${String(isOff)} @click=${() => changeFoot(app, app.place.cowKey, name, turn)}>
      ${isOff ? "Block is off" : `Take the block off the ${labels.claws[block.claw]}`} <small>${labels.blocks[block.kind]}, due ${dayWords(block.off_due)}</small></button>`;
  });
}
