/* A stop of the week is moved: dragged, or focused and picked up by the key M. What each place costs is asked once,
   when the stop is picked up, and shown before it is dropped. Without this script its page has a button for each place.
   [data-lane] holds the stops of a shift, across or down; [data-door] is a day, [data-out] takes a stop out. */
const SLACK = 6;
const EDGE = 90;
const NO_ANSWER = "No answer just now. Nothing was moved; put it back and try again.";
const week = document.querySelector("[data-week]");
const tag = week?.querySelector("[data-price]");
const form = week?.querySelector("[data-move-form]");
const mark = document.createElement("div");
let held = null;
let press = null;

const isSeen = (element) => element.getClientRects().length > 0;
const stopOf = (element) => element.closest("[data-stop]");

/* ---- what a place costs ---- */

async function ask(stop) {
  const answer = await fetch(stop.dataset.places, { headers: { Accept: "application/json" }, cache: "no-store" });
  if (answer.status === 409) throw new Error((await answer.json()).fault);
  if (!answer.ok) throw new Error(NO_ANSWER);
  return answer.json();
}

function pickUp(grip, byKeys) {
  const stop = stopOf(grip);
  const mine = { stop, grip, byKeys, id: stop.dataset.stop, data: null, target: null, fault: "" };
  held = mine;
  for (const twin of twins(mine.id)) twin.classList.add("is-held");
  tag.hidden = false;
  tag.querySelector("[data-price-keys]").hidden = !byKeys;
  say("Asking what other places cost", "");
  mine.answer = ask(stop).then(
    (data) => { mine.data = data; },
    (fault) => { mine.fault = fault instanceof TypeError ? NO_ANSWER : fault.message; },
  ).then(() => { if (held === mine) { showWhere(mine.data); mine.begun?.(); } });
  return mine;
}

/* Days that could take it stand out as soon as that is known, each with what it would cost at the least. */
function showWhere(data) {
  const can = data?.places.filter((place) => !place.why && !place.here).sort((a, b) => a.money - b.money) ?? [];
  for (const spot of week.querySelectorAll("[data-lane], [data-door]")) {
    const { lane, door } = spot.dataset;
    const best = can.find((place) => (lane ? place.shift === lane : place.day === door));
    spot.classList.toggle("can-take", Boolean(best));
    if (best && (door || spot.dataset.axis === "across")) spot.append(priceNote(best.short));
  }
}

function priceNote(words) {
  const note = document.createElement("span");
  note.className = "price-note";
  note.textContent = words;
  return note;
}

const twins = (id) => week.querySelectorAll(`[data-stop="${CSS.escape(id)}"]`);

function putBack() {
  if (!held) return;
  for (const twin of twins(held.id)) twin.classList.remove("is-held");
  mark.remove();
  tag.hidden = true;
  tag.classList.remove("is-loose");
  tag.style.left = tag.style.top = "";
  for (const lit of week.querySelectorAll(".is-aimed, .can-take")) lit.classList.remove("is-aimed", "can-take");
  for (const note of week.querySelectorAll(".price-note")) note.remove();
  held = null;
}

/* ---- showing it ---- */

function say(where, what, kind = "") {
  tag.dataset.kind = kind;
  const [first, second] = [tag.querySelector("[data-price-where]"), tag.querySelector("[data-price-what]")];
  if (first.textContent !== where) first.textContent = where;
  if (second.textContent !== what) second.textContent = what;
}

function show(target) {
  held.target = target;
  mark.remove();
  for (const door of week.querySelectorAll(".is-aimed")) door.classList.remove("is-aimed");
  if (held.fault) return say("It stays where it was", held.fault, "no");
  if (!held.data) return say("Asking what other places cost", "");
  const { name, out } = held.data;
  if (!target) return say(name, "Over no day: dropping it here leaves it where it is.");
  if (target === "out") {
    week.querySelector("[data-out]")?.classList.add("is-aimed");
    return say(`${name}: out of this week`, out.price ? sentence(out.price) : out.why, out.price ? "yes" : "no");
  }
  if (target.here) say(`${name}: where it is now`, "Dropping it here changes nothing.");
  else if (target.why) say(`Not there: ${target.where}`, target.why, "no");
  else say(target.where, sentence(target.price), "yes");
  showMark(target);
}

const sentence = (price) => (price.endsWith(".") ? price : `${price}.`);

/* A line where the stop would come to lie. */
function showMark(target) {
  const lanes = [...week.querySelectorAll(`[data-lane="${CSS.escape(target.shift)}"]`)].filter(isSeen);
  const lane = lanes.find((each) => each === held.lane) ?? lanes[0];
  if (!lane) return;
  const others = othersIn(lane);
  const across = lane.dataset.axis === "across";
  const box = lane.getBoundingClientRect();
  const before = others[target.position - 1]?.getBoundingClientRect();
  const after = others[target.position]?.getBoundingClientRect();
  const at = across ? between(before?.right, after?.left, box.left) : between(before?.bottom, after?.top, box.top);
  mark.className = `drop-mark${target.why ? " is-no" : ""}`;
  mark.style.left = `${across ? at - 2 : box.left}px`;
  mark.style.top = `${across ? box.top : at - 2}px`;
  mark.style.width = across ? "4px" : `${box.width}px`;
  mark.style.height = across ? `${box.height}px` : "4px";
  document.body.append(mark);
}

function between(end, start, edge) {
  if (end !== undefined && start !== undefined) return (end + start) / 2;
  if (end !== undefined) return end + 4;
  return start !== undefined ? start - 4 : edge + 4;
}

const othersIn = (lane) => [...lane.querySelectorAll("[data-stop]")].filter((s) => s.dataset.stop !== held.id);

/* ---- dropping it ---- */

async function drop() {
  const mine = held;
  await mine.answer;
  if (held !== mine) return;
  if (mine.byPointer) aim(mine.byPointer);
  const { target, data } = mine;
  const isOut = target === "out";
  const may = data && target && (isOut ? data.out.price : !target.why && !target.here);
  if (!may) {
    if (!mine.byKeys) { putBack(); stay(target, data); }
    return;
  }
  form.action = mine.stop.dataset.move;
  form.elements.shift.value = isOut ? "" : target.shift;
  form.elements.position.value = isOut ? "0" : String(target.position);
  form.requestSubmit();
}

/* A refused drop says why for a while. */
function stay(target, data) {
  const why = target === "out" ? data?.out.why : target?.why;
  if (!why) return;
  tag.hidden = false;
  say("It stays where it was", why, "no");
  setTimeout(() => { if (!held) tag.hidden = true; }, 6000);
}

/* ---- by pointer ---- */

function aim({ x, y }) {
  const under = document.elementsFromPoint(x, y);
  const find = (selector) => under.map((e) => e.closest?.(selector)).find((e) => e && week.contains(e));
  const door = find("[data-door]");
  if (door) {
    show(bestOn(door.dataset.door));
    door.classList.add("is-aimed");
    return;
  }
  const lane = find("[data-lane]");
  held.lane = lane;
  if (lane) return show(placeIn(lane, x, y));
  show(find("[data-out]") ? "out" : null);
}

function placeIn(lane, x, y) {
  const across = lane.dataset.axis === "across";
  const position = othersIn(lane).filter((stop) => {
    const box = stop.getBoundingClientRect();
    return across ? box.left + box.width / 2 < x : box.top + box.height / 2 < y;
  }).length;
  return placeAt(lane.dataset.lane, position);
}

const placeAt = (shift, position) => held.data?.places.find((p) => p.shift === shift && p.position === position);

function bestOn(day) {
  const there = held.data?.places.filter((place) => place.day === day) ?? [];
  const can = there.filter((place) => !place.why && !place.here);
  return can.sort((a, b) => a.money - b.money)[0] ?? there.find((place) => place.here) ?? there.at(-1) ?? null;
}

function onPress(event) {
  const grip = event.target.closest?.("[data-grip]");
  if (!grip || event.button !== 0 || held) return;
  press = { grip, x: event.clientX, y: event.clientY, pointer: event.pointerId };
}

function onMove(event) {
  if (press && event.pointerId === press.pointer && !held) {
    if (press.dragged || Math.hypot(event.clientX - press.x, event.clientY - press.y) < SLACK) return;
    press.dragged = true;
    pickUp(press.grip, false).begun = () => held.byPointer && aim(held.byPointer);
    try { press.grip.setPointerCapture(press.pointer); } catch { /* the pointer is gone already */ }
  }
  if (!held || held.byKeys) return;
  event.preventDefault();
  held.byPointer = { x: event.clientX, y: event.clientY };
  follow(event);
  aim(held.byPointer);
}

/* The tag goes along with a mouse; a finger would cover it, so it stays at the foot of the screen. */
function follow(event) {
  const isMouse = event.pointerType === "mouse";
  tag.classList.toggle("is-loose", isMouse);
  if (isMouse) {
    tag.style.left = `${Math.min(event.clientX + 16, innerWidth - tag.offsetWidth - 16)}px`;
    tag.style.top = `${Math.min(event.clientY + 18, innerHeight - tag.offsetHeight - 8)}px`;
  } else {
    tag.style.left = tag.style.top = "";
  }
  const overDoor = document.elementsFromPoint(event.clientX, event.clientY).some((e) => e.closest?.("[data-door]"));
  if (event.clientY > innerHeight - EDGE) scrollBy(0, 14);
  else if (event.clientY < EDGE && !overDoor) scrollBy(0, -14);
}

function onRelease(event) {
  if (!press || event.pointerId !== press.pointer) return;
  const { grip, dragged } = press;
  press = null;
  if (!dragged) return;
  // The click that ends a drag opens nothing.
  const swallow = (click) => click.preventDefault();
  grip.addEventListener("click", swallow);
  setTimeout(() => grip.removeEventListener("click", swallow), 200);
  if (held && !held.byKeys) drop();
}

/* ---- by keys ---- */

const STEPS = { ArrowLeft: [0, -1], ArrowRight: [0, 1], ArrowUp: [-1, 0], ArrowDown: [1, 0] };

function onKey(event) {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  if (held && event.key === "Escape") {
    event.preventDefault();
    return putBack();
  }
  if (held?.byKeys) return carry(event);
  const grip = event.target.closest?.("[data-grip]");
  if (!grip || held || event.key.toLowerCase() !== "m") return;
  event.preventDefault();
  pickUp(grip, true).begun = () => show(held.data?.places.find((p) => p.here) ?? held.data?.places.find((p) => !p.why) ?? null);
}

function carry(event) {
  if (event.key === "Enter") {
    event.preventDefault();
    return drop();
  }
  if (!held.data || event.key === "Tab") return;
  if (event.key === "Delete") {
    event.preventDefault();
    return show("out");
  }
  if (event.key.toLowerCase() === "c") return show(cheapest() ?? held.target);
  const step = STEPS[event.key];
  if (!step) return;
  event.preventDefault();
  const next = step[0] ? nextDay(step[0]) : nextPlace(step[1]);
  if (next) show(next);
}

function cheapest() {
  const can = held.data.places.filter((place) => !place.why && !place.here);
  return can.sort((a, b) => a.money - b.money)[0];
}

function nextPlace(by) {
  const now = held.target;
  return now && now !== "out" ? placeAt(now.shift, now.position + by) : null;
}

function nextDay(by) {
  const shifts = [...new Set(held.data.places.map((place) => place.shift))];
  const now = held.target && held.target !== "out" ? shifts.indexOf(held.target.shift) : -1;
  const shift = shifts[now + by];
  if (!shift) return null;
  const there = held.data.places.filter((place) => place.shift === shift);
  const can = there.filter((place) => !place.why);
  return can.find((place) => place.here) ?? can.sort((a, b) => a.money - b.money)[0] ?? there[0];
}

if (week) {
  week.addEventListener("pointerdown", onPress);
  document.addEventListener("pointermove", onMove, { passive: false });
  document.addEventListener("pointerup", onRelease);
  document.addEventListener("pointercancel", () => { press = null; if (held && !held.byKeys) putBack(); });
  week.addEventListener("dragstart", (event) => { if (event.target.closest?.("[data-grip]")) event.preventDefault(); });
  week.addEventListener("keydown", onKey);
  week.addEventListener("focusout", () => { if (held?.byKeys) putBack(); });
  addEventListener("pageshow", putBack);
}
