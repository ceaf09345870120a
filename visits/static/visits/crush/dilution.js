/* How much product goes into a bucket. Arithmetic only: what to use and how strong, the label and local rules say. */

const PARTS = /^1\s*(?::|in|to)\s*(\d+(?:[.,]\d+)?)$/;
const PERCENT = /^(\d+(?:[.,]\d+)?)\s*%\s*(?:(w|v)\s*\/\s*v)?$/;

/**
 * Read a dilution as trimmers and labels write it: "1:100", "1 in 50", "2 %", "2 % w/v", "0.5% v/v".
 * @param {string} text
 * @returns {{by: "volume"|"weight"|"either", share: number}|null} share: ml per ml (volume) or g per ml (weight);
 *   null when it is none of these.
 */
export function readDilution(text) {
  const plain = text.trim().toLowerCase();
  const parts = PARTS.exec(plain);
  if (parts) return sensible("volume", 1 / number(parts[1]));
  const percent = PERCENT.exec(plain);
  if (!percent) return null;
  const by = { w: "weight", v: "volume" }[percent[2]] ?? "either";
  return sensible(by, number(percent[1]) / 100);
}

/**
 * What goes into a bucket of so many litres, ready mixed: 1:100 in 10 l is 100 ml; 2 % w/v in 10 l is 200 g.
 * @param {string} text the dilution
 * @param {number} litres
 * @returns {{ml: number|null, g: number|null}|null} null when the dilution cannot be read or the bucket is no size
 */
export function bucketNeeds(text, litres) {
  const dilution = readDilution(text);
  if (!dilution || !(litres > 0)) return null;
  const amount = tidy(dilution.share * litres * 1000);
  return {
    ml: dilution.by === "weight" ? null : amount,
    g: dilution.by === "volume" ? null : amount,
  };
}

/**
 * The same in words, or what hinders them.
 * @param {string} text the dilution
 * @param {number} litres
 * @returns {string}
 */
export function bucketWords(text, litres) {
  if (!text.trim()) return "Say how strong, and the amount for the bucket stands here.";
  if (!(litres > 0)) return "Say how many litres the bucket holds.";
  const needs = bucketNeeds(text, litres);
  if (!needs) return "Cannot work out the amount from that: write 1:100, or 2 % w/v for powder.";
  const amounts = [
    needs.ml === null ? "" : `${needs.ml} ml`,
    needs.g === null ? "" : `${needs.g} g`,
  ].filter(Boolean);
  const which = amounts.length > 1 ? `${amounts[0]} of liquid or ${amounts[1]} of powder` : `${amounts[0]} of product`;
  return `${which}, water up to ${litres} l.`;
}

function number(text) {
  return Number(text.replace(",", "."));
}

/* Nothing, and more product than bucket, are slips of the thumb. */
function sensible(by, share) {
  return share > 0 && share <= 1 ? { by, share } : null;
}

/* Floats: 0.02 x 10 x 1000 must read 200, and a capful needs no third figure after the point. */
function tidy(amount) {
  return amount >= 10 ? Math.round(amount) : Math.round(amount * 10) / 10;
}
