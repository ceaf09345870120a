/* Asks how far the work is, says it aloud now and then, and goes to the result.
   Answer expected: {percent, text, cost?, done, url, failed} */
const PAUSE_MS = 1000;
const LONGEST_PAUSE_MS = 15000;
const SAY_EVERY_MS = 5000;
const NO_ANSWER = "No answer just now. The work goes on by itself; nothing is lost. Asking again.";

function show(box, state) {
  const percent = Math.max(0, Math.min(100, Number(state.percent) || 0));
  const bar = box.querySelector("progress");
  bar.value = percent;
  bar.textContent = `${percent} %`;
  box.querySelector("[data-percent]").textContent = `${Math.round(percent)} %`;
  box.querySelector("[data-cost]").textContent = state.cost ?? "";
  box.querySelector("[data-text]").textContent = state.text ?? "";
}

/* Read aloud: seldom, or a screen reader would never be silent. */
function say(box, text) {
  const line = box.querySelector("[data-aloud]");
  if (line.textContent !== text) line.textContent = text;
}

function stop(box, text) {
  box.querySelector("[data-running]").hidden = true;
  const failed = box.querySelector("[data-failed]");
  failed.hidden = false;
  if (text) failed.querySelector("[data-why]").textContent = text;
}

/* Only ever to an address of this site. */
function go(url) {
  const to = new URL(url ?? location.href, location.href);
  if (to.origin === location.origin) location.replace(to.href);
}

async function ask(url) {
  const answer = await fetch(url, { headers: { Accept: "application/json" }, cache: "no-store" });
  if (!answer.ok) throw new Error(String(answer.status));
  return answer.json();
}

async function follow(box) {
  let pause = PAUSE_MS;
  let saidAt = 0;
  for (;;) {
    try {
      const state = await ask(box.dataset.url);
      pause = PAUSE_MS;
      show(box, state);
      box.dispatchEvent(new CustomEvent("trimops:progress", { bubbles: true, detail: state }));
      if (state.failed) return stop(box, state.text);
      if (state.done) return go(state.url);
      if (Date.now() - saidAt >= SAY_EVERY_MS) {
        say(box, `${Math.round(state.percent)} %. ${state.text}`);
        saidAt = Date.now();
      }
    } catch {
      pause = Math.min(pause * 2, LONGEST_PAUSE_MS);
      box.querySelector("[data-text]").textContent = NO_ANSWER;
      say(box, NO_ANSWER);
    }
    await new Promise((resume) => setTimeout(resume, pause));
  }
}

for (const box of document.querySelectorAll("[data-progress]")) follow(box);
