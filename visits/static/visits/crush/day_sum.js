/* The day summed up for the sign-off: the vet's first, then blocks, re-checks, counts and who was not seen. */

import { rechecksFor, referrals, trimKind } from "./rules.js";
import { dayOf, daysAfter } from "./when.js";

/**
 * @param {Map<string, object>} shown what shows now
 * @param {object} papers
 * @returns {{cows: number, kinds: object, blocksOn: number, wraps: number, vet: object[], blocks: object[],
 *   rechecks: object[], notSeen: object[]}}
 *   vet: {cowKey, number, foot: "LH"|null, reason, told}; blocks still on: {number, foot, claw, kind, put_on, off_by},
 *   first to come off first; rechecks: {number, foot, what, due_from, due_until}, first due first;
 *   notSeen: cows of the list as the papers give them
 */
export function sumOfDay(shown, papers) {
  const seen = cowsOf(shown, papers);
  const actions = seen.flatMap((cow) => cow.entry.feet.flatMap((foot) => foot.actions));
  return {
    cows: seen.length,
    kinds: countKinds(seen),
    blocksOn: actions.filter((action) => action.kind === "block").length,
    wraps: actions.filter((action) => action.kind === "wrap").length,
    vet: seen.flatMap((cow) => forVet(cow, papers)),
    blocks: [...seen.flatMap((cow) => newBlocks(cow, papers)), ...standing(seen, papers)].sort(byDay("off_by")),
    rechecks: seen.flatMap((cow) => again(cow, papers)).sort(byDay("due_from")),
    notSeen: notSeen(seen, papers),
  };
}

function cowsOf(shown, papers) {
  const known = new Map(papers.cows.map((cow) => [cow.id, cow]));
  return [...shown.values()]
    .filter((writing) => writing.kind === "cow")
    .map((writing) => {
      const cow = known.get(writing.content.cow.id) ?? null;
      return {
        cow,
        cowKey: writing.cowKey ?? (cow ? `c${cow.id}` : `n${writing.content.cow.new.uid}`),
        number: cow?.number ?? writing.content.cow.new?.number ?? "?",
        entry: writing.content.entry,
        told: writing.content.told_vet,
        day: dayOf(writing.placed_at ?? writing.made_at, papers.visit.zone),
      };
    });
}

function countKinds(seen) {
  const kinds = { functional: 0, corrective: 0, check: 0 };
  for (const cow of seen) kinds[trimKind(cow.entry)] += 1;
  return kinds;
}

/* The rules' reasons, and what the trimmer put down in words: each once. */
function forVet(cow, papers) {
  const said = [{ foot: null, reason: cow.entry.for_vet }];
  for (const foot of cow.entry.feet) said.push({ foot: foot.foot, reason: foot.for_vet });
  const lines = [...referrals(cow.entry, papers), ...said].filter((line) => line.reason);
  const once = new Map(lines.map((line) => [`${line.foot} ${line.reason}`, line]));
  const { cowKey, number, told } = cow;
  return [...once.values()].map(({ foot, reason }) => ({ cowKey, number, foot: foot || null, reason, told }));
}

function newBlocks(cow, papers) {
  const days = papers.figures.rechecks.block;
  return cow.entry.feet.flatMap((foot) =>
    foot.actions
      .filter((action) => action.kind === "block")
      .map((action) => ({
        number: cow.number,
        foot: foot.foot,
        claw: action.claw,
        kind: action.block_kind,
        put_on: cow.day,
        off_by: daysAfter(cow.day, days[action.block_kind]?.[1] ?? 0),
      })),
  );
}

/* Put on at an earlier visit, and neither taken off nor replaced today. */
function standing(seen, papers) {
  const entries = new Map(seen.filter((cow) => cow.cow).map((cow) => [cow.cow.id, cow.entry]));
  return papers.cows.flatMap((cow) =>
    cow.blocks
      .filter((block) => !isChanged(block, entries.get(cow.id)))
      .map(({ foot, claw, kind, put_on, off_due }) => ({ number: cow.number, foot, claw, kind, put_on, off_by: off_due })),
  );
}

function isChanged(block, entry) {
  const foot = entry?.feet.find((one) => one.foot === block.foot);
  return (foot?.actions ?? []).some(
    ({ kind, claw }) => (kind === "block_off" || kind === "block") && (!claw || claw === block.claw),
  );
}

function again(cow, papers) {
  return rechecksFor(cow.entry, papers, cow.day, cow.cow?.blocks ?? []).map((due) => ({ number: cow.number, ...due }));
}

function notSeen(seen, papers) {
  const done = new Set(seen.map((cow) => cow.cow?.id));
  const known = new Map(papers.cows.map((cow) => [cow.id, cow]));
  return papers.queue.filter((id) => !done.has(id)).map((id) => known.get(id)).filter(Boolean);
}

function byDay(field) {
  return (a, b) => a[field].localeCompare(b[field]) || a.number.localeCompare(b.number, "en", { numeric: true });
}
