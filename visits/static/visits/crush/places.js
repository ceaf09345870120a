/* Which face stands at which address (the part behind the #), and what must come first. */
import { face as begin } from "./faces/begin.js";
import { face as knives } from "./faces/blades.js";
import { face as cow } from "./faces/cow.js";
import { face as cows } from "./faces/cows.js";
import { face as days } from "./faces/days.js";
import { face as farm } from "./faces/farm.js";
import { face as foot } from "./faces/foot.js";
import { face as kit } from "./faces/kit.js";
import { face as keypad } from "./faces/keypad.js";
import { face as opening } from "./faces/opening.js";
import { face as phone } from "./faces/phone.js";
import { face as queue } from "./faces/queue.js";
import { face as signOff } from "./faces/sign_off.js";
import { face as told } from "./faces/told.js";
import { face as wash } from "./faces/wash.js";

export const FACES = {
  begin, cow, cows, days, farm, foot, kit, knives, number: keypad, opening, phone, queue, "sign-off": signOff, told, wash,
};
const BEFORE_THE_FIRST_COW = ["begin", "farm", "phone", "told"];

/** {face, cowKey, foot} of an address such as "#/cow/c412/LH"; of "#/knives/c412" too, from which the way leads back. */
export function placeOf(hash) {
  const [face, cowKey, foot] = hash.replace(/^#\/?/, "").split("/").map(decodeURIComponent);
  if (face === "cow" && cowKey) return { face: foot ? "foot" : "cow", cowKey, foot };
  if (face === "knives" && cowKey) return { face, cowKey };
  return { face: face in FACES ? face : "queue" };
}

/** The face to show now: without papers the opening one, before the start check that one. */
export function faceOf(app) {
  if (app.visit === null) return app.place.face === "phone" ? "phone" : "days";
  if (!app.papers) return "opening";
  if (!app.isBegun() && !BEFORE_THE_FIRST_COW.includes(app.place.face)) return "begin";
  if (app.place.cowKey && !app.cowOf(app.place.cowKey)) return "queue";
  return app.place.face;
}
