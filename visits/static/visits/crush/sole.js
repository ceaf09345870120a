/* The drawing of a sole: every place a button, what was found marked, a block hatched. */
import { html, svg } from "../../trimops/lib/lit-html.js";
import { VIEW, blockOutline, middleOf, placesOf } from "./sole_map.js";

const BOX = `${VIEW.left} ${VIEW.top} ${VIEW.width} ${VIEW.height}`;

/**
 * The large drawing. `foot` in wire shape, `chosen` the place being put down ({claw, zone} or null), `onPlace(claw,
 * zone)` what a tap does.
 */
export function sole(foot, papers, chosen, onPlace) {
  const place = (each) => {
    const found = foot.findings.filter((one) => one.claw === each.claw && one.zone === each.zone);
    const isChosen = chosen?.claw === each.claw && chosen?.zone === each.zone;
    const name = placeName(papers, each, found);
    const act = () => onPlace(each.claw, each.zone);
    return svg`<g class=${`place ${each.claw === "skin" ? "is-skin" : ""} ${each.isWall ? "is-wall" : ""} ${isChosen ? "is-chosen" : ""} ${found.length ? "has-found" : ""}`}
      role="button" tabindex="0" aria-label=${name} aria-pressed=${String(found.length > 0)}
      data-place=${`${each.claw} ${each.zone}`} @click=${act} @keydown=${onKey(act)}>
      <polygon points=${each.cell}></polygon>
      ${found.length ? svg`<circle class="mark" cx=${each.middle[0]} cy=${each.middle[1]} r="19"></circle>` : ""}
      <text x=${each.middle[0]} y=${each.middle[1] + 7}>${found.length ? found[0].lesion : each.zone}</text>
    </g>`;
  };
  const block = foot.actions.find((one) => one.kind === "block");
  return html`<svg class="sole" viewBox=${BOX} role="group" aria-label=${soleName(papers, foot)}>
    ${placesOf(foot.foot).map(place)}
    ${block ? svg`<polygon class="block-on" points=${blockOutline(foot.foot, block.claw)}></polygon>` : ""}
    ${block ? blockWords(foot, block, papers) : ""}
    ${sideWords(foot.foot)}
  </svg>`;
}

/** The thumbnail for a foot's button on the cow's page: outline, block and dots, nothing to press. */
export function smallSole(foot) {
  const block = foot.actions.find((one) => one.kind === "block");
  return svg`<svg class="small-sole" viewBox=${BOX} aria-hidden="true">
    ${placesOf(foot.foot).map((each) => svg`<polygon class=${each.claw === "skin" ? "is-skin" : ""} points=${each.cell}></polygon>`)}
    ${block ? svg`<polygon class="block-on" points=${blockOutline(foot.foot, block.claw)}></polygon>` : ""}
    ${foot.findings.map((one) => {
      const [x, y] = middleOf(foot.foot, one.claw, one.zone);
      return svg`<circle class="mark" cx=${x} cy=${y} r="30"></circle>`;
    })}
  </svg>`;
}

function onKey(act) {
  return (event) => {
    if (event.key !== "Enter" && event.key !== " ") return;
    event.preventDefault();
    act();
  };
}

function placeName(papers, place, found) {
  const where = papers.zones.names[place.zone];
  const claw = place.claw === "skin" ? "" : `${papers.labels.claws[place.claw]}, `;
  const seen = found.map((one) => lesionName(papers, one.lesion)).join(", ");
  return `${claw}zone ${place.zone}, ${where}${seen ? `: ${seen}` : ""}`;
}

function soleName(papers, foot) {
  return `Sole of the ${papers.labels.feet[foot.foot]} foot from below, toes up`;
}

function lesionName(papers, code) {
  return papers.lesions.find((each) => each.code === code)?.name ?? code;
}

function blockWords(foot, block, papers) {
  const [x] = middleOf(foot.foot, block.claw, 6);
  return svg`<text class="word" x=${x} y="334">${papers.labels.blocks[block.block_kind] ?? "block"}</text>`;
}

function sideWords(foot) {
  const isRight = foot.startsWith("R");
  return svg`<text class="word at-left" x="-180" y="398">${isRight ? "outer" : "inner"}</text>
    <text class="word at-right" x="180" y="398">${isRight ? "inner" : "outer"}</text>
    <text class="word" x="0" y="52">toe</text>`;
}
