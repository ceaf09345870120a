/* What a cow, a visit and a wash-down used up. Twin of visits/domain/kit/use_rules.py and of
   visits/services/kit/use_wash_kit.py with visits/domain/kit/weight_and_volume.py. */

import { disinfectantAmount, halfUp } from "./dilution.js";

/**
 * Used by what was noted, in the unit of each consumable; nothing for what was not used.
 * @returns {Map<number, number>} consumable id -> number, to two places
 */
export function materials(entry, papers) {
  const times = occasions(entry);
  const used = new Map();
  for (const item of papers.consumables) {
    // Hundredths, whole: decimals of the stock ledger do not survive adding up as floats.
    let hundredths = 0;
    for (const use of item.uses) {
      hundredths += Math.round(Number(use.quantity) * 100) * (times.get(`${use.per} ${use.block_kind}`) ?? 0);
    }
    if (hundredths) used.set(item.id, hundredths / 100);
  }
  return used;
}

/**
 * Used once by the visit, however many cows it has.
 * @returns {Map<number, number>} consumable id -> number, to two places
 */
export function visitMaterials(papers) {
  const used = new Map();
  for (const item of papers.consumables) {
    const lines = item.uses.filter((use) => use.per === "visit");
    const hundredths = lines.reduce((sum, use) => sum + Math.round(Number(use.quantity) * 100), 0);
    if (hundredths) used.set(item.id, hundredths / 100);
  }
  return used;
}

/**
 * What was mixed for a wash-down, of the stock and in its unit.
 * @param {object} content of a wash-down
 * @returns {{item: object, used: number}|null} null where nothing of the stock was, or it cannot be told how much
 */
export function washMaterial(content, papers) {
  const item = papers.consumables.find((one) => one.id === content.consumable);
  if (!item || !content.litres) return null;
  const amount = disinfectantAmount(content.dilution, content.litres, item.unit);
  const hundredths = amount && inUnit(amount, item);
  return hundredths === null ? null : { item, used: hundredths / 100 };
}

/* Grams are millilitres times grams per millilitre; pieces have no weight here. */
function inUnit({ hundredths, unit }, item) {
  if (unit === item.unit) return hundredths;
  const density = Math.round(Number(item.grams_per_ml ?? 0) * 1000);
  if (!density || !["ml", "g"].includes(item.unit)) return null;
  return item.unit === "g" ? halfUp(hundredths * density, 1000) : halfUp(hundredths * 1000, density);
}

/* How often each occasion came: blocks by kind and of all kinds, wraps, dressings, feet, the cow herself. */
function occasions(entry) {
  const actions = entry.feet.flatMap((foot) => foot.actions);
  const blocks = actions.filter((action) => action.block_kind);
  const count = (kind) => actions.filter((action) => action.kind === kind).length;
  const times = new Map();
  for (const { block_kind } of blocks) {
    times.set(`block ${block_kind}`, (times.get(`block ${block_kind}`) ?? 0) + 1);
  }
  times.set("block ", blocks.length);
  times.set("wrap ", count("wrap"));
  times.set("dressing ", count("dressing"));
  times.set("foot ", entry.feet.length);
  return times.set("cow ", 1);
}
