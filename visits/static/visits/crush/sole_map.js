/* The sole as a map for thumbs: where on the drawing each numbered place is, and how far its cell reaches.
 *
 * Drawn for this project: a foot seen from below, toes up, walls folded out, in units that are CSS pixels on a phone
 * 360 wide. A place's cell is all of the claw (or the skin) that is nearer to its middle than to any other; the middles
 * stand so that a circle of 56 fits into every cell, which a glove can hit. Place numbers: the ILC map (Kuopio 2008).
 */

export const VIEW = { left: -182, top: 0, width: 364, height: 404 };

/** Middles of the places of the claw on the right of the drawing; the other claw is its mirror. */
const ON_CLAW = {
  1: [80, 36],
  8: [139, 61],
  2: [152, 119],
  7: [152, 187],
  3: [152.5, 265],
  4: [106, 232],
  5: [101, 150],
  6: [96, 306],
  11: [57, 98],
  12: [57, 202],
};
const ON_SKIN = { 0: [0, 130], 10: [0, 285], 9: [0, 372] };
const WALLS = [7, 8, 11, 12];

const CLAW_EDGE = [
  [28.5, 44], [34, 26], [48, 13], [66, 7], [86, 6], [106, 11], [128, 22], [150, 31], [166, 46], [176, 66],
  [180.5, 92], [181, 140], [181, 185], [181, 240], [181, 275], [174, 303], [160, 322], [140, 334], [112, 339],
  [86, 338], [62, 329], [44, 312], [34, 290], [28.5, 262],
];
const HEEL = [[28.5, 60], ...CLAW_EDGE.slice(18).reverse(), [128, 352], [118, 384], [90, 401]];
const SKIN_EDGE = [...HEEL, ...HEEL.map(mirrored).reverse()];

/** -1 when that claw is drawn on the left, 1 on the right: the outer claw of a right foot is on the left. */
export function sideOf(foot, claw) {
  if (claw === "skin") return 0;
  const outer = foot.startsWith("R") ? -1 : 1;
  return claw === "lateral" ? outer : -outer;
}

/** Every place of a foot: {zone, claw, middle: [x, y], cell: "x,y x,y …", isWall}, skin first, as it is drawn. */
export function placesOf(foot) {
  return DRAWN[foot.startsWith("R") ? "right" : "left"];
}

/** Where a mark for that place stands; the middle of the claw where the place was not noted. */
export function middleOf(foot, claw, zone) {
  if (claw === "skin" || zone in ON_SKIN) return ON_SKIN[zone] ?? ON_SKIN[9];
  const [x, y] = ON_CLAW[zone] ?? ON_CLAW[5];
  return [x * sideOf(foot, claw), y];
}

/** The outline of the claw that carries a block, as points of a polygon. */
export function blockOutline(foot, claw) {
  const side = sideOf(foot, claw);
  return asPoints(CLAW_EDGE.map(([x, y]) => [(105 + (x - 105) * 0.72) * side, 172 + (y - 172) * 0.72]));
}

function mirrored([x, y]) {
  return [-x, y];
}

function asPoints(polygon) {
  return polygon.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join(" ");
}

/** The part of `polygon` nearer to `here` than to `other` (cut along the line midway between them). */
function nearerTo(here, other, polygon) {
  const depth = ([x, y]) =>
    (x - (here[0] + other[0]) / 2) * (here[0] - other[0]) + (y - (here[1] + other[1]) / 2) * (here[1] - other[1]);
  const kept = [];
  polygon.forEach((point, at) => {
    const before = polygon.at(at - 1);
    const [a, b] = [depth(before), depth(point)];
    if (a * b < 0) kept.push([0, 1].map((axis) => before[axis] + ((point[axis] - before[axis]) * a) / (a - b)));
    if (b >= 0) kept.push(point);
  });
  return kept;
}

function cells(middles, edge) {
  return Object.entries(middles).map(([zone, middle]) => {
    const others = Object.values(middles).filter((other) => other !== middle);
    const cell = others.reduce((polygon, other) => nearerTo(middle, other, polygon), edge);
    return { zone: Number(zone), middle, cell };
  });
}

function drawn(isRightFoot) {
  const skin = cells(ON_SKIN, SKIN_EDGE).map((each) => ({ ...each, claw: "skin" }));
  const right = cells(ON_CLAW, CLAW_EDGE).map((each) => ({ ...each, claw: isRightFoot ? "medial" : "lateral" }));
  const left = right.map((each) => ({
    ...each,
    claw: isRightFoot ? "lateral" : "medial",
    middle: mirrored(each.middle),
    cell: each.cell.map(mirrored),
  }));
  return [...skin, ...left, ...right].map((each) => ({
    ...each,
    cell: asPoints(each.cell),
    isWall: WALLS.includes(each.zone),
  }));
}

const DRAWN = { left: drawn(false), right: drawn(true) };
