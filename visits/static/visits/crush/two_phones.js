/* Cows that two phones put down without knowing of each other: which version shows, and what the other one said. */

import { groupOf } from "./shown.js";

/**
 * @param {object[]} writings all that are kept of the visit
 * @param {Map<string, object>} shown what shows now
 * @param {string[]} settled uids of versions that the trimmer has looked at and left
 * @returns {{shown: object, others: object[]}[]} `others` the last word of each other side, where it says something else
 */
export function twoPhones(writings, shown, settled = []) {
  const left = new Set(settled);
  const index = indexOf(writings);
  const seen = new Set(); // a cow that both phones added stands here twice: she is told of once
  return standing(writings, shown).flatMap((one) => {
    seen.add(one.uid);
    const others = othersOf(one, index).filter(({ uid }) => !left.has(uid) && !seen.has(uid));
    return others.length > 0 ? [{ shown: one, others }] : [];
  });
}

/** Do two versions say the same of the cow? Then there is nothing to choose. */
export function saysTheSame(one, other) {
  if (one.is_gone || other.is_gone) return one.is_gone === other.is_gone;
  return told(one) === told(other);
}

/** What to write so that the other version shows instead; it is made after the one that shows, and so is later. */
export function keepingOther({ shown, other }) {
  const { kind, record, cowKey, uid } = shown;
  const content = { ...other.content, cow: shown.content.cow };
  return { kind, record, cowKey, content, after: uid, is_gone: other.is_gone };
}

/* What shows of each cow, and of those taken back the taking back. */
function standing(writings, shown) {
  const gone = writings.filter((one) => one.kind === "cow" && one.is_gone && one.shows && !shown.has(groupOf(one)));
  return [...[...shown.values()].filter((one) => one.kind === "cow"), ...gone];
}

/* Days have hundreds of writings, and this is asked whenever the list of the day is drawn. */
function indexOf(writings) {
  const byUid = new Map(writings.map((one) => [one.uid, one]));
  const groups = new Map();
  const named = new Map();
  const add = (map, key, one) => (map.has(key) ? map.get(key).push(one) : map.set(key, [one]));
  for (const one of writings) {
    add(groups, groupOf(one), one);
    for (const uid of one.beside) add(named, uid, one);
  }
  return { byUid, groups, named };
}

function othersOf(one, { byUid, groups, named }) {
  const before = chain(one, byUid);
  const isApart = (other) => other.state !== "refused" && !before.has(other.uid) && !chain(other, byUid).has(one.uid);
  // The server names them in `beside`, as they were when it answered; what came later is found by its side.
  const byServer = [...one.beside.map((uid) => byUid.get(uid)).filter(Boolean), ...(named.get(one.uid) ?? [])];
  const bySide = groups.get(groupOf(one)).filter((other) => side(other) !== side(one));
  const found = [...new Set([...bySide, ...byServer])].filter(isApart);
  const early = new Set(found.flatMap((other) => [...chain(other, byUid)].slice(1)));
  return found.filter((other) => !early.has(other.uid) && !saysTheSame(one, other));
}

/** The uids of a version and of all that it was edited from. */
function chain(one, byUid) {
  const uids = new Set();
  for (let at = one; at && !uids.has(at.uid); at = byUid.get(at.after)) uids.add(at.uid);
  return uids;
}

function side(writing) {
  return writing.state === "other" ? `by ${writing.by}` : "this phone";
}

function told({ content }) {
  const { crush_seconds: _, ...entry } = content.entry;
  return JSON.stringify([entry, content.told_vet ?? ""], (key, value) => (isPlain(value) ? inOrder(value) : value));
}

const isPlain = (value) => value !== null && typeof value === "object" && !Array.isArray(value);

function inOrder(value) {
  return Object.fromEntries(Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1)));
}
