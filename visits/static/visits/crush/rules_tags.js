/* Hints for numbers that look misread. A hint warns, it never stops anything: a tag may be older than its rule.
   Twin of farms/domain/ear_tag.py and electronic_id.py: the same hints in the same words. */

const JOINTS = /[\s.\-/_]+/gu;
const LETTERS_FIRST = /^([A-Z]{2})([A-Z0-9]{1,12})$/u;
const DIGITS_FIRST = /^([0-9]{3})([0-9]{10,12})$/u;
const TAG_COUNTRIES = /^(?:AT|B[EG]|C[HYZ]|D[EK]|E[ELS]|F[IR]|H[RU]|I[EST]|L[ITUV]|MT|N[LO]|P[LT]|RO|S[EIK]|UK|XI)$/u;
const SAME_COUNTRY = { GB: "UK", GR: "EL" };
/* 38 bits of ISO 11784 hold no larger national id. */
const MAX_NATIONAL_ID = 2 ** 38 - 1;
/* Fewer figures after two letters are a number of the farm's own, or a tag half typed. */
const FEWEST_OF_A_TAG = 8;

const bareText = (text) => text.trim().toUpperCase().replace(JOINTS, "");

/**
 * A hint for a number as it is typed: for what looks like an official tag or an electronic id whether it was read
 * right; "" for anything else (the farm's own numbers have no rule to fail) and for what looks right.
 * @param {string} text
 * @returns {string}
 */
export function checkDigit(text) {
  const bare = bareText(text);
  if (/^[0-9]{15}$/u.test(bare)) return electronicIdHint(text);
  const looksLikeTag = /^[0-9]{12,14}$/u.test(bare) || (LETTERS_FIRST.test(bare) && bare.length >= FEWEST_OF_A_TAG + 2);
  return looksLikeTag ? earTagHint(text) : "";
}

/** What looks wrong with an official tag; "" when nothing does. */
export function earTagHint(text) {
  const tag = readEarTag(text);
  if (!tag) return "is not the form of an official tag: country, then up to 12 figures";
  if (tag.country === "UK") return ukHint(tag.code);
  if (/^[0-9]+$/u.test(tag.country)) return "starts with a country number: is this the electronic id?";
  if (!TAG_COUNTRIES.test(tag.country)) return `${tag.country} is not a country whose tags we know`;
  return isDigits(tag.code) ? "" : "letters after the country: check it was read right";
}

/** The check digit, 1 to 7, between a six-figure herd mark and a five-figure animal number. */
export const ukCheckDigit = (herdMark, animal) => ((herdMark * 100_000 + animal) % 7) + 1;

/** What is wrong with 15 printed digits as an electronic id; "" when nothing is. */
export function electronicIdHint(text) {
  const digits = text.trim().replace(/[\s.\-_]+/gu, "");
  if (!/^[0-9]{15}$/u.test(digits)) return "is not an electronic id: 15 digits";
  const [country, national] = [digits.slice(0, 3), digits.slice(3)];
  if (Number(country) < 1) return `${country} is no country or manufacturer code`;
  return Number(national) > MAX_NATIONAL_ID ? `${national} is too large: at most ${MAX_NATIONAL_ID}` : "";
}

function readEarTag(text) {
  const bare = bareText(text);
  if (/^[0-9]{12}$/u.test(bare)) return { country: "UK", code: bare };
  const found = LETTERS_FIRST.exec(bare) ?? DIGITS_FIRST.exec(bare);
  return found && { country: SAME_COUNTRY[found[1]] ?? found[1], code: found[2] };
}

function ukHint(code) {
  if (!isDigits(code)) return "letters in a UK tag: only cattle born before July 2000 carry them";
  if (code.length !== 12) return `a UK tag has 12 figures after the letters, this has ${code.length}`;
  const expected = ukCheckDigit(Number(code.slice(0, 6)), Number(code.slice(7)));
  return Number(code[6]) === expected ? "" : `check digit does not fit: expected ${expected}`;
}

const isDigits = (text) => /^[0-9]+$/u.test(text);
