/* Which cows a typed number narrows to. */

const MOST = 12;
/* A trimmer types from the left: one or two figures are the start of a number far more often than the end of a tag. */
const FEWEST_OF_AN_ENDING = 3;
const small = (text) => text.toLowerCase();

/**
 * Cows a typed number may mean, the likeliest first, at most twelve: who has exactly that number; then those on today's
 * list before the others; among them who has an identity that ends in it (as Cow.known_as finds her), then whose number
 * begins with it (the other way round while fewer than three figures are typed).
 * @param {string} typed
 * @returns {object[]} cows as the papers give them
 */
export function cowsLike(papers, typed) {
  const text = small(typed.trim());
  if (!text) return [];
  const found = [];
  for (const cow of papers.cows) {
    const how = howKnown(cow, text);
    if (how) found.push({ cow, rank: [how === 1 ? 0 : 1, cow.why.length ? 0 : 1, how] });
  }
  return found.sort(byRank).slice(0, MOST).map(({ cow }) => cow);
}

/** Whether she is known by exactly that number or by an identity that ends in it: the question of Cow.known_as. */
export const isKnownAs = (cow, typed) => small(cow.number) === small(typed) || endsOne(cow, small(typed));

const endsOne = (cow, text) => cow.ids.some((identity) => small(identity.value).endsWith(text));

function howKnown(cow, text) {
  const number = small(cow.number);
  if (number === text) return 1;
  const endsFirst = text.length >= FEWEST_OF_AN_ENDING;
  const [ends, begins] = [endsOne(cow, text), number.startsWith(text)];
  if (!ends && !begins) return 0;
  return (endsFirst ? ends : begins) ? 2 : 3;
}

function byRank(one, other) {
  for (let place = 0; place < one.rank.length; place += 1) {
    if (one.rank[place] !== other.rank[place]) return one.rank[place] - other.rank[place];
  }
  return byNumber(one.cow, other.cow);
}

/* 9 before 41 before 412: shorter numbers first, then by their figures. */
function byNumber(one, other) {
  const apart = one.number.length - other.number.length;
  if (apart) return apart;
  return one.number < other.number ? -1 : Number(one.number > other.number) || one.id - other.id;
}
