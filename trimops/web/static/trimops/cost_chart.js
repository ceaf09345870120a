/* The drawing of how the cost falls, made by the server, put in anew with each answer about the progress. */
const figure = document.querySelector("[data-cost-chart]");
const place = figure?.querySelector("[data-cost-drawing]");
let shown = "";

document.addEventListener("trimops:progress", (event) => {
  const drawing = event.detail.chart ?? "";
  if (!place || !drawing || drawing === shown) return;
  const svg = new DOMParser().parseFromString(drawing, "image/svg+xml").documentElement;
  if (svg.nodeName !== "svg") return;
  place.replaceChildren(document.importNode(svg, true));
  figure.hidden = false;
  shown = drawing;
});
