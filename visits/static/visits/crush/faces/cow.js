/* The cow in the crush: who she is, how she walked in, her four feet, and the one tap that keeps her. */
import { html } from "../../../trimops/lib/lit-html.js";
import { askedBox } from "../asked_box.js";
import { bladesOf } from "../blade_turns.js";
import { inHandShort, isPast } from "../blade_words.js";
import { bandButton, crushClock } from "../crush_clock.js";
import { emptyFoot, FEET, footOf, isTouched, isTrimmed, isUncut, uncut, withFoot } from "../entry.js";
import { cowBefore, cowReasons } from "../cow_history.js";
import { cowMore } from "../cow_more.js";
import { meanwhile } from "../meanwhile.js";
import { scaleOf } from "../rules.js";
import { smallSole } from "../sole.js";
import { footWords, savedWords } from "../words.js";
import { finished } from "../cow_content.js";

const AS_SEEN = ["LF", "RF", "LH", "RH"]; // from above, her head up

export function face(app) {
  const { cowKey } = app.place;
  const cow = app.cowOf(cowKey);
  const draft = app.draftOf(cowKey);
  if (!draft) return html`<h1>Cow ${cow.number}</h1>
    <button class="act-main" @click=${() => app.openCow(cowKey)}>Put her in the crush</button>`;
  const { entry } = draft.content;
  return html`
    <div class="cow-head">
      <h1>${draft.after ? "Mend cow" : "Cow"} ${cow.number}</h1>
      ${crushClock(app, draft)}
    </div>
    ${meanwhile(app, cowKey, draft)}
    ${cowReasons(app, cow.known)}
    <div class="feet">${AS_SEEN.map((name) => footButton(app, cowKey, draft, name, cow.known))}</div>
    ${restRow(app, cowKey, draft)}
    ${scoreRow(app, cowKey, entry)}
    ${cowBefore(cow.known)}
    <div class=${app.papers.blades?.length ? "row-of-three" : "row-of-two"}>${bandButton(app, cowKey, draft)} ${knifeLink(app, cowKey)}
      <button class="key" data-leave @click=${() => app.leaveCow(cowKey)}>${draft.after ? "Leave as she was" : "Not done: let her go"}</button></div>
    ${cowMore(app, cowKey, draft)}
    ${askedBox(app, cowKey)}
    ${saveBar(app, cowKey, draft)}`;
}

/** Which knife is in hand, on the way to change it; nothing where no knives are kept. */
function knifeLink(app, cowKey) {
  const rows = bladesOf(app);
  if (!rows.length) return "";
  const isDue = !rows.some((row) => row.isInHand) || rows.some((row) => row.isInHand && (row.isDull || isPast(row)));
  return html`<a class=${`key ${isDue ? "is-due" : ""}`} href=${`#/knives/${cowKey}`}>Knife <small>${inHandShort(rows)}</small></a>`;
}

function scoreRow(app, cowKey, entry) {
  const { papers } = app;
  const sheet = scaleOf(entry, papers) ?? papers.scales.find((each) => each.id === papers.scale);
  const put = (score) =>
    app.changeEntry(cowKey, (now) => {
      const isSame = now.mobility_score === score;
      return { ...now, mobility_score: isSame ? null : score, mobility_scale: isSame ? "" : sheet.id };
    });
  return html`<div class="scores" role="group" aria-label=${`How she walked in, ${sheet.label}`}>
    <span class="scores-word">Walked in <small>${sheet.label}</small></span>
    ${sheet.scores.map((score) => html`<button class=${`key score ${score >= sheet.lame_from ? "is-lame" : ""}`}
      aria-pressed=${String(entry.mobility_score === score && entry.mobility_scale === sheet.id)}
      @click=${() => put(score)}>${score}${score === sheet.lame_from ? html`<small>lame</small>` : ""}</button>`)}
  </div>`;
}

function footButton(app, cowKey, draft, name, known) {
  const foot = footOf(draft.content.entry, name);
  const label = app.papers.labels.feet[name];
  return html`<a class=${`foot-button ${isTouched(foot) ? "is-touched" : ""}`} href=${`#/cow/${cowKey}/${name}`} data-foot=${name}>
    ${smallSole(foot)}
    <span><strong>${label}</strong> ${footState(app, draft, foot, known)}</span>
  </a>`;
}

/** What stands on the foot; on a foot that she comes for and that nobody saw to yet, what it waits for. */
function footState(app, draft, foot, known) {
  const waits = [...(known?.rechecks ?? []), ...(known?.blocks ?? [])].find((one) => one.foot === foot.foot);
  if (waits && !isTouched(foot)) return html`<span class="foot-state is-due">${waits.off_due ? "block on" : "look again"}</span>`;
  return html`<span class="foot-state">${stateOf(app, draft, foot)}</span>`;
}

function stateOf(app, draft, foot) {
  if (!isTouched(foot)) return draft.rest.includes(foot.foot) ? "trimmed" : "not lifted";
  if (foot.findings.length || foot.actions.some((each) => ["block", "block_off"].includes(each.kind))) {
    return footWords(foot, app.papers);
  }
  if (isUncut(foot)) return "no cut needed";
  return isTrimmed(foot) ? "trimmed, looked at" : footWords(foot, app.papers);
}

/** Which of the feet with nothing put down count as trimmed. A cow being mended has every foot said already. */
function restRow(app, cowKey, draft) {
  if (draft.after || draft.mends) return "";
  const choices = [["All four", FEET], ["Hind feet", FEET.slice(0, 2)], ["None", []]];
  const isChosen = (feet) => feet.join() === draft.rest.join();
  return html`<div class="rest" role="group" aria-label="Feet trimmed without anything found">
    <span class="scores-word">Plain trim</span>
    ${choices.map(([word, feet]) => html`<button class="key" aria-pressed=${String(isChosen(feet))}
      @click=${() => app.change(cowKey, (now) => ({ ...now, rest: feet }))}>${word}</button>`)}
  </div>`;
}

function saveBar(app, cowKey, draft) {
  const { entry } = draft.content;
  const isPlain = !entry.feet.some(isTouched);
  const words = savedWords(finished(draft).entry, app.papers);
  const noCut = (now) => ({ rest: [], content: { ...now.content, entry: everyFootUncut(now.content.entry) } });
  return html`<div class="bar">
    ${isPlain && !draft.after ? html`<button class="bar-second" data-save="no-cut" @click=${() => app.saveCow(cowKey, noCut)}>No cut needed</button>` : ""}
    <button class="bar-main" data-save="main" @click=${() => app.saveCow(cowKey)}>
      <strong>${draft.after ? "Keep the change" : `Done with ${app.cowOf(cowKey).number}`}</strong> <small>${words}</small></button>
  </div>`;
}

function everyFootUncut(entry) {
  return FEET.reduce((sum, name) => withFoot(sum, uncut(footOf(sum, name) ?? emptyFoot(name))), entry);
}

