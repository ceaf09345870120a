/* Which blades are in hand, and how many cows each edge has cut. Twin of visits/domain/kit/edge_log.py and edge_lives.py
   for one visit; held equal by tests/browser/test_phone_blades.py. Knows no screen, no store and no clock. */

/**
 * How each blade stands after the turns and the cows of this visit, in the order of the papers.
 *
 * A turn says all that is in hand from its moment on; before the first one, what was in hand when the visit began. A cow
 * counts on each blade that is in hand when she is noted, from the turn's own moment on, until that edge went dull, cracked
 * or chipped.
 * @param {object[]} blades as in the papers, told without what this visit says
 * @param {{at: number, record: string, in_hand: number[], went_dull: number[], cracked: number[], chipped: number[]}[]} turns
 *   of this visit, moments in milliseconds
 * @param {number[]} cows moments at which cows that were cut were noted
 * @returns {{blade: object, cows: number, isInHand: boolean, isDull: boolean, dulledAt: number|null,
 *   fault: ""|"cracked"|"chipped", mayCut: boolean}[]} `dulledAt` null: not on this visit
 */
export function bladesNow(blades, turns, cows) {
  const inOrder = [...turns].sort((one, other) => one.at - other.at || (one.record < other.record ? -1 : 1));
  return blades.map((blade) => standOf(blade, inOrder, cows));
}

/** The keys of all that is in hand now; of a blade that is not in these papers too. */
export function handNow(blades, turns) {
  const before = blades.filter((blade) => blade.is_in_hand).map((blade) => blade.id);
  const last = turns.reduce((best, turn) => (best && isBefore(turn, best) ? best : turn), null);
  return last ? last.in_hand : before;
}

function standOf(blade, turns, cows) {
  const since = Date.parse(blade.edge_since);
  const names = (part) => turns.filter((turn) => turn[part].includes(blade.id));
  // Of one moment the end of the old edge comes before the new one.
  const dulled = names("went_dull").find((turn) => turn.at > since)?.at ?? null;
  const broken = turns.filter((turn) => [...turn.cracked, ...turn.chipped].includes(blade.id));
  const fault = broken.length ? faultIn(broken.at(-1), blade.id) : "";
  const ends = [dulled, ...broken.map((turn) => turn.at).filter((at) => at > since)].filter((at) => at !== null);
  const until = blade.is_dull ? -Infinity : Math.min(Infinity, ...ends);
  const onIt = cows.filter((at) => at >= since && at < until && isInHandAt(blade, turns, at));
  const mayCut = blade.may_cut && !fault;
  return {
    blade,
    cows: blade.cows_on_edge + onIt.length,
    isInHand: mayCut && isInHandAt(blade, turns, Infinity),
    isDull: blade.is_dull || dulled !== null,
    dulledAt: dulled,
    fault,
    mayCut,
  };
}

/* Said both of one blade in one breath: the crack is what counts. */
function faultIn(turn, id) {
  return turn.cracked.includes(id) ? "cracked" : "chipped";
}

function isInHandAt(blade, turns, at) {
  const before = turns.filter((turn) => turn.at <= at).at(-1);
  return before ? before.in_hand.includes(blade.id) : blade.is_in_hand;
}

function isBefore(one, other) {
  return one.at < other.at || (one.at === other.at && one.record < other.record);
}
