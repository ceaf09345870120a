/* Asks how far the work is, says it aloud now and then, and goes to the result.
   Answer expected: {percent, text, cost?, done, url, failed} */
const PAUSE_MS = 1000;
const LONGEST_PAUSE_MS = 15000;
const SAY_EVERY_MS = 5000;

function show(box, state) {
  const percent = Math.max(0, Math.min(100, Number(state.percent) || 0));
  const bar = box.querySelector("progress");
  bar.value = percent;
  bar.textContent = `${percent} %`;
  box.querySelector("[data-percent]").textContent = `${Math.round(percent)} %`;
  box.querySelector("[data-cost]").textContent = state.cost ?? "";
}

function say(box, text) {
  const line = box.querySelector("[data-text]");
  if (line.textContent !== text) line.textContent = text;
}

function stop(box, text) {
  box.querySelector("[data-running]").hidden = true;
  const failed = box.querySelector("[data-failed]");
  failed.hidden = false;
  if (text) failed.querySelector("[data-why]").textContent = text;
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
      if (state.failed) return stop(box, state.text);
      if (state.done) return location.replace(state.url);
      if (Date.now() - saidAt >= SAY_EVERY_MS) {
        say(box, state.text);
        saidAt = Date.now();
      }
    } catch {
      pause = Math.min(pause * 2, LONGEST_PAUSE_MS);
      say(box, "No answer just now. The work goes on by itself; nothing is lost. Asking again.");
    }
    await new Promise((resume) => setTimeout(resume, pause));
  }
}

for (const box of document.querySelectorAll("[data-progress]")) follow(box);
