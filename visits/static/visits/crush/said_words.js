/* A cow in one line for lists: the kind of trim, then what was found, done and is the vet's. */

import { trimKind } from "./rules.js";
import { entryLines } from "./words.js";

const KINDS = { functional: "Functional trim", corrective: "Corrective trim", check: "Looked at" };

/** "Corrective trim, 4 feet; left hind outer, zone 4: sole ulcer, 2; left hind inner: wooden block". */
export function cowLine(entry, papers) {
  return [headWords(entry), ...entryLines(entry, papers)].join("; ");
}

/** "Functional trim, 4 feet". */
export function headWords(entry) {
  const feet = entry.feet.length;
  const kind = KINDS[trimKind(entry)];
  return feet ? `${kind}, ${feet} ${feet === 1 ? "foot" : "feet"}` : `${kind}, no foot lifted`;
}

/** Whose phone a writing is from. */
export function whoPut({ state, by }, papers) {
  if (state !== "other") return "this phone";
  return by === papers.seat.name ? "your other phone" : by;
}
