/* Fetches the papers of a visit and keeps them; by them the phone also learns who is signed in. */

import { papersOf } from "./addresses.js";
import { askServer } from "./ask_server.js";
import { keepPapers } from "./store.js";
import { sessionToken } from "./token.js";

const FORMAT = "trimops-crush-papers/1";

/**
 * @param {number} visit
 * @returns {Promise<{trouble: "" | "no_signal" | "sign_in" | "server" | "not_yours", seat: object | null}>}
 */
export async function fetchPapers(visit) {
  const before = sessionToken();
  const { trouble, body } = await askServer(papersOf(visit));
  if (trouble) return { trouble: trouble === "token" ? "not_yours" : plain(trouble), seat: null };
  // Something else answered: the page that a public network asks to log in with, for one.
  if (body?.format !== FORMAT) return { trouble: "server", seat: null };
  const after = sessionToken();
  // Somebody signed in while the papers were on their way: whose sign-in the token is, the next ones will say.
  await keepPapers(body, before && before !== after ? "" : after);
  return { trouble: "", seat: body.seat };
}

function plain(trouble) {
  return ["no_signal", "sign_in", "not_yours"].includes(trouble) ? trouble : "server";
}
