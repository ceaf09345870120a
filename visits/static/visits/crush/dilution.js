/* How much product goes into a bucket. Arithmetic only: what to use and how strong, the label and local rules say.
   Twin of visits/domain/kit/disinfectant_amount.py, which says what is meant by parts. */

const SPACES = /[ \t\u00a0\u2009\u202f]/g;
const NUMBER = "([0-9]{1,6}(?:[.,][0-9]{1,4})?)";
const PARTS = new RegExp(`^1(?::|in|to)${NUMBER}$`);
const PERCENT = new RegExp(`^${NUMBER}%(?:(w|v)/v)?$`);
const PER_LITRE = new RegExp(`^${NUMBER}(g|ml)(?:/|per)(?:l|litre)$`);

/**
 * Read a dilution as trimmers and labels write it: "1:100", "1 in 50", "2 %", "2 % w/v", "0.5% v/v", "20 g/l".
 * @param {string} text
 * @returns {{by: "parts"|"volume"|"weight"|"either", times: number, over: number}|null} `times`/`over`: hundredths of
 *   a ml or g in a tenth of a litre ready mixed, both whole; null when it is none of these.
 */
export function readDilution(text) {
  const plain = text.toLowerCase().replace(SPACES, "");
  const parts = PARTS.exec(plain);
  if (parts) return sensible("parts", 1e8, tenThousandths(parts[1]));
  const percent = PERCENT.exec(plain);
  if (percent) {
    const by = { w: "weight", v: "volume" }[percent[2]] ?? "either";
    return sensible(by, tenThousandths(percent[1]), 100);
  }
  const perLitre = PER_LITRE.exec(plain);
  if (!perLitre) return null;
  return sensible(perLitre[2] === "g" ? "weight" : "volume", tenThousandths(perLitre[1]), 1000);
}

/**
 * What goes into so many litres of one product, to a hundredth.
 * @param {string} text the dilution
 * @param {number|string} litres to a tenth
 * @param {string} [countedIn] the unit of the product's stock: a powder is weighed where the dilution leaves it open
 * @returns {{hundredths: number, unit: "ml"|"g"}|null}
 */
export function disinfectantAmount(text, litres, countedIn = "") {
  const dilution = readDilution(text);
  const tenths = Math.round(Number(litres) * 10);
  if (!dilution || !(tenths > 0)) return null;
  const { by, times, over } = dilution;
  const isOpen = by === "parts" || by === "either";
  const unit = by === "weight" || (isOpen && countedIn === "g") ? "g" : "ml";
  return { hundredths: halfUp(tenths * times, over), unit };
}

/** A whole number divided by another, the half rounded up. Exact below 2 to the 52nd. */
export function halfUp(number, by) {
  return Math.floor((2 * number + by) / (2 * by));
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
  const amount = tidy((litres * 10 * dilution.times) / dilution.over / 100);
  return {
    ml: dilution.by === "weight" ? null : amount,
    g: dilution.by === "weight" || dilution.by === "either" ? amount : null,
  };
}

/**
 * The same in words, or what hinders them.
 * @param {string} text the dilution
 * @param {number} litres
 * @param {string} [countedIn] the unit of the stock it is taken from, where one is
 * @returns {string}
 */
export function bucketWords(text, litres, countedIn = "") {
  if (!text.trim()) return "Say how strong, and the amount for the bucket stands here.";
  if (!(litres > 0)) return "Say how many litres the bucket holds.";
  const needs = bucketNeeds(text, litres);
  if (!needs) return "Cannot work out the amount from that: write 1:100, or 2 % w/v for powder.";
  const ofStock = countedIn && disinfectantAmount(text, litres, countedIn);
  if (ofStock) return `${tidy(ofStock.hundredths / 100)} ${ofStock.unit} of product, water up to ${litres} l.`;
  const amounts = [
    needs.ml === null ? "" : `${needs.ml} ml`,
    needs.g === null ? "" : `${needs.g} g`,
  ].filter(Boolean);
  const which = amounts.length > 1 ? `${amounts[0]} of liquid or ${amounts[1]} of powder` : `${amounts[0]} of product`;
  return `${which}, water up to ${litres} l.`;
}

function tenThousandths(text) {
  return Math.round(Number(text.replace(",", ".")) * 1e4);
}

/* Nothing, and more product than bucket, are slips of the thumb. A tenth of a litre is 10000 hundredths of a ml. */
function sensible(by, times, over) {
  return times > 0 && over > 0 && times <= 1e4 * over ? { by, times, over } : null;
}

/* Floats: 0.02 x 10 x 1000 must read 200, and a capful needs no third figure after the point. */
function tidy(amount) {
  return amount >= 10 ? Math.round(amount) : Math.round(amount * 10) / 10;
}
