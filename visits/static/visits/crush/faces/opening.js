/* Nothing of this visit is on the phone yet: say whether it is coming, and what to do if it is not. */
import { html } from "../../../trimops/lib/lit-html.js";

export function face(app) {
  const { trouble } = app.status;
  if (app.trouble) {
    return html`<h1>This phone did not open the visit</h1>
      <p>${app.trouble}</p>
      <p>Nothing that was noted is lost. Close the page and open it again; if it stays so, note the cows on paper.</p>`;
  }
  if (trouble === "not_yours") return html`<h1>This visit is not yours</h1><p>It belongs to somebody else, or it is gone.</p>`;
  if (trouble === "sign_in") return html`<h1>Sign in to fetch the visit</h1><p>Its papers are not on this phone yet.</p>`;
  if (trouble) {
    return html`<h1>No signal, and this visit is not on the phone</h1>
      <p>Open it once where there is signal: after that it works all day without.</p>`;
  }
  return html`<h1>Fetching the visit</h1><p>Cows, blocks and re-checks are on their way to this phone.</p>`;
}
