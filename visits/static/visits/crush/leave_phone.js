/* Signing out: what of the days at the crush is on this phone only, and clearing the rest. Called by sign_out.js. */

import { cowsWaiting, everyDay, isHeld, letGo } from "./store_counts.js";
import { phoneOf } from "./store_seat.js";
import { write } from "./phone_db.js";

const isHalf = (day) => isHeld(day) || day.drafts > 0;

/**
 * @param {string} who "<business>:<user>" of whoever signs out
 * @returns {Promise<{words: string, farm: string, address: string}[]>} one for each day that would lose something
 */
export async function whatWaits(who) {
  const days = (await everyDay((day) => day.who === who)).filter(isHalf);
  const cows = await Promise.all(days.map(cowsWaiting));
  return days.map((day, place) => ({
    words: wordsOf({ ...day, cows: cows[place] }),
    farm: day.farm,
    address: `/visits/${day.visit}/crush/`,
  }));
}

/**
 * Clear what is kept of all days, so that nobody else reads it on this phone. Days of other people of which something
 * waits stay: it can be sent only under their own name.
 */
export async function clearPhone(who) {
  await letGo(() => true, isHalf);
  await write(["phone"], async (transaction) => {
    const phone = await phoneOf(transaction);
    if (phone.who !== who) return;
    await transaction.objectStore("phone").put({ ...phone, who: "", name: "", token: "" }, "phone");
  });
}

/* "3 cows and 2 photos of Low Croft wait to be sent." */
function wordsOf(day) {
  const cows = many(day.cows, "cow");
  const photos = many(day.photos, "photo");
  const rest = day.begun ? "the start of the visit" : "";
  const waiting = [cows, photos, rest].filter(Boolean);
  if (waiting.length > 0) return `${listed(waiting)} of ${day.farm} ${isOne(day) ? "waits" : "wait"} to be sent.`;
  if (isHeld(day)) return `What you noted at ${day.farm} waits to be sent.`;
  return `${many(day.drafts, "cow")} of ${day.farm} ${day.drafts === 1 ? "is" : "are"} begun and not noted yet.`;
}

function isOne(day) {
  return day.cows + day.photos + day.begun === 1;
}

function many(number, word) {
  return number === 0 ? "" : `${number} ${word}${number === 1 ? "" : "s"}`;
}

function listed(words) {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}
