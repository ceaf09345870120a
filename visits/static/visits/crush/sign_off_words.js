/* Words proposed for the sign-off, from what was put down: the trimmer may change every one of them. */

import { dayWords } from "./when.js";

/**
 * What was done, in one or two lines: "12 cows: 9 functional trim, 2 corrective trim, 1 looked at. 2 blocks on."
 * @param {ReturnType<typeof import("./day_sum.js").sumOfDay>} sum
 * @returns {string}
 */
export function doneWords(sum) {
  if (sum.cows === 0) return "No cow was noted.";
  const kinds = [
    [sum.kinds.functional, "functional trim"],
    [sum.kinds.corrective, "corrective trim"],
    [sum.kinds.check, "looked at"],
  ];
  const lines = [`${things(sum.cows, "cow")}: ${list(kinds.filter(([n]) => n).map(([n, word]) => `${n} ${word}`))}.`];
  const kit = [];
  if (sum.blocksOn) kit.push(`${things(sum.blocksOn, "block")} on`);
  if (sum.wraps) kit.push(`${things(sum.wraps, "foot", "feet")} wrapped`);
  if (kit.length) lines.push(`${list(kit)}.`);
  return lines.join("\n");
}

/**
 * What the farm must do: the vet first, then blocks and re-checks with their days, then the usual cautions.
 * @param {ReturnType<typeof import("./day_sum.js").sumOfDay>} sum
 * @param {object} papers
 * @returns {string}
 */
export function toDoWords(sum, papers) {
  const feet = papers.labels.feet;
  const lines = [];
  if (sum.vet.length) lines.push(`Ring the vet today: ${cows(sum.vet, feet)}.`);
  for (const [day, blocks] of grouped(sum.blocks, (block) => block.off_by)) {
    const word = day < papers.visit.day ? "Blocks overdue since" : "Blocks off by";
    lines.push(`${word} ${dayWords(day)}: ${cows(blocks, feet)}.`);
  }
  for (const [days, dues] of grouped(sum.rechecks, spanWords)) {
    lines.push(`Show again ${days}: ${cows(dues, feet)}.`);
  }
  return [...lines, ...papers.cautions.for_the_farm].join("\n");
}

/**
 * @param {{due_from: string, due_until: string}} due
 * @returns {string} "between Wed 9 Dec and Wed 16 Dec"
 */
export function spanWords(due) {
  if (due.due_from === due.due_until) return `on ${dayWords(due.due_from)}`;
  return `between ${dayWords(due.due_from)} and ${dayWords(due.due_until)}`;
}

/**
 * @param {number} count
 * @param {string} one
 * @param {string} many
 * @returns {string} "1 cow", "3 cows"
 */
export function things(count, one, many = `${one}s`) {
  return `${count} ${count === 1 ? one : many}`;
}

/* "cow 412 (left hind, right hind), cow 96": each cow once. */
function cows(lines, feet) {
  const byCow = grouped(lines, (line) => line.number);
  return [...byCow].map(([number, own]) => {
    const named = [...new Set(own.map((line) => feet[line.foot]).filter(Boolean))];
    return named.length ? `cow ${number} (${named.join(", ")})` : `cow ${number}`;
  }).join(", ");
}

function grouped(rows, keyOf) {
  const groups = new Map();
  for (const row of rows) {
    const key = keyOf(row);
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  return groups;
}

function list(words) {
  return words.join(", ");
}
