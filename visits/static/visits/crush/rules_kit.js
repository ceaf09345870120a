/* What a cow used up: a block and what goes with it, a wrap, a dressing. Twin of visits/services/trim_kit.py. */

/**
 * Used by what was put down, in the unit of each consumable; nothing for what was not used.
 * @returns {Map<number, number>} consumable id -> number, to two places
 */
export function materials(entry, papers) {
  const actions = entry.feet.flatMap((foot) => foot.actions);
  const blocks = actions.filter((action) => action.block_kind);
  const count = (kind) => actions.filter((action) => action.kind === kind).length;
  const used = new Map();
  for (const item of papers.consumables) {
    // Hundredths, whole: decimals of the stock ledger do not survive adding up as floats.
    let hundredths = Math.round(Number(item.used_per_block) * 100) * blocks.length;
    hundredths += item.block_kind ? 100 * blocks.filter((block) => block.block_kind === item.block_kind).length : 0;
    hundredths += ["wrap", "dressing"].includes(item.kind) ? 100 * count(item.kind) : 0;
    if (hundredths) used.set(item.id, hundredths / 100);
  }
  return used;
}
