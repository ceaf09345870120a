/* Says that something was kept: to this page, and to the other tabs that are open on it. */

const here = new EventTarget();
const tabs = new BroadcastChannel("trimops-crush");

// Brought back from the browser's memory by its back button: somebody may have signed out meanwhile.
window.addEventListener("pageshow", (event) => event.persisted && tell("came"));

/** @param {string} what "written" (here, to be sent), "came" (from the server), "person" (another one sits here) or
 * "draft" (in another tab) */
export function tell(what) {
  here.dispatchEvent(new CustomEvent("news", { detail: { what, isHere: true } }));
  tabs.postMessage(what);
}

/** Say it to the other tabs only: this page has it on the screen already. */
export function tellTabs(what) {
  tabs.postMessage(what);
}

/**
 * Be told of each change. @param {(news: {what: string, isHere: boolean}) => void} hear
 * @returns {() => void} ends it
 */
export function onChange(hear) {
  const fromHere = (event) => hear(event.detail);
  const fromTabs = (event) => hear({ what: event.data, isHere: false });
  here.addEventListener("news", fromHere);
  tabs.addEventListener("message", fromTabs);
  return () => {
    here.removeEventListener("news", fromHere);
    tabs.removeEventListener("message", fromTabs);
  };
}
