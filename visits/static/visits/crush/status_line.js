/* The line on every face: whose cows, how many wait on this phone, and what stands in their way. */
import { html } from "../../trimops/lib/lit-html.js";
import { SIGN_IN } from "./addresses.js";
import { clock } from "./when.js";

const TROUBLE = {
  no_signal: "No signal",
  sign_in: "Signed out",
  server: "The office does not answer",
  not_yours: "Not your visit any more",
  other_person: "Somebody else is signed in",
};

/** The line as a template; a link to sign in where that is what is missing. */
export function statusLine(app) {
  const home = app.visit === null ? "Visits" : (app.papers?.farm.name ?? "Visit");
  return html`<header class="line">
    <a class="line-home" href="#/">${home}</a>
    <p class=${`line-sent ${lineKind(app.status)}`} role="status">${lineWords(app)}${signIn(app)}</p>
  </header>`;
}

function lineKind({ waiting, refused, trouble }) {
  if (refused || trouble === "sign_in" || trouble === "not_yours") return "is-urgent";
  return waiting || trouble ? "is-due" : "is-done";
}

function lineWords(app) {
  const { waiting, refused, is_sending, trouble, sent_at } = app.status;
  const parts = [];
  if (refused) parts.push(`${refused} to mend`);
  if (waiting) parts.push(is_sending ? `Sending ${waiting}` : `${waiting} waiting to be sent`);
  if (trouble) parts.push(TROUBLE[trouble] ?? "Not sent");
  if (parts.length) return parts.join(" · ");
  return sent_at && app.papers ? `All sent ${clock(sent_at, app.papers.visit.zone)}` : "Nothing waits to be sent";
}

function signIn(app) {
  if (app.status.trouble !== "sign_in") return "";
  const next = encodeURIComponent(location.pathname);
  return html` <a href=${`${SIGN_IN}?next=${next}`}>Sign in to send</a>`;
}
