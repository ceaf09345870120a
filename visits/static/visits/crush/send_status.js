/* What the line on every screen says about sending. */

import { everyDay, isHeld, sumOf } from "./store_counts.js";
import { sittingHere } from "./store_seat.js";

/** The status as `startSender` hands it on. */
export async function statusNow({ visit, trouble, isSending, sentAt }) {
  const days = await everyDay((day) => day.who !== sittingHere() || visit === null || day.visit === visit);
  const count = sumOf(days.filter((day) => day.who === sittingHere()));
  const others_wait = waitingOfOthers(days);
  return {
    ...count,
    is_sending: isSending && count.waiting > 0,
    sent_at: sentAt,
    trouble: trouble || (others_wait.length > 0 ? "other_person" : ""),
    others_wait,
  };
}

/* Days of somebody else on this phone: they are sent when that person signs in here again, never under another name. */
function waitingOfOthers(days) {
  const held = days.filter((day) => day.who !== sittingHere() && isHeld(day));
  return held.map(({ name, farm, waiting, refused, begun }) => ({ name, farm, waiting: waiting + refused + begun }));
}
