/* Nobody signs out while something that was noted at the crush is on this phone only; else the days kept on it are
   cleared first. A browser that keeps nothing (too old, a private window) just signs out. */
const LONGEST_MS = 3000;
const KEEPER = "../visits/crush/leave_phone.js";

for (const form of document.querySelectorAll("form[data-sign-out]")) {
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    // This press only asks; what is sent in the end is no second press (send_once.js).
    event.stopPropagation();
    leave(form);
  });
}

async function leave(form) {
  const waiting = await inTime(settle(form.dataset.signOut)).catch(() => []);
  if (waiting.length > 0) return refuse(waiting);
  return form.submit();
}

/** What waits; nothing does: then the phone is cleared. */
async function settle(who) {
  if (!(await hasKept())) return [];
  const keeper = await import(KEEPER);
  const waiting = await keeper.whatWaits(who);
  if (waiting.length === 0) await keeper.clearPhone(who);
  return waiting;
}

/* Looking would make an empty one. */
async function hasKept() {
  if (!("indexedDB" in window)) return false;
  const all = await indexedDB.databases?.();
  return !all || all.some(({ name }) => name === "trimops-crush");
}

/* What waits is not lost by signing out, only harder to send: so nobody is locked in by a database that hangs. */
function inTime(work) {
  const late = new Promise((_, reject) => setTimeout(reject, LONGEST_MS, new Error("late")));
  return Promise.race([work, late]);
}

function refuse(waiting) {
  const list = document.createElement("ul");
  list.append(...waiting.map(line));
  const box = document.querySelector(".messages");
  box.replaceChildren(list);
  box.scrollIntoView({ block: "nearest" });
  box.querySelector("a").focus();
}

function line({ words, farm, address }) {
  const item = document.createElement("li");
  const mark = element("span", "Stopped", { className: "mark mark-urgent" });
  const link = element("a", `Open ${farm} at the crush`, { href: address });
  item.append(mark, element("span", `${words} See to that where there is signal, then sign out.`), link);
  return item;
}

function element(kind, text, more = {}) {
  return Object.assign(document.createElement(kind), { textContent: text, ...more });
}
