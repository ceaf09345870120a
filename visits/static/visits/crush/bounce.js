/* A wet glove touches twice where it meant once. What would fall on the face that has only just come is not taken. */

const BOUNCE_MS = 120; // no finger is lifted and put down again on purpose in that time

/** Watch over the page. A tap that began on another face, or bounced on to this one, does nothing. */
export function ignoreBounces() {
  const last = { at: -Infinity, place: "" };
  let downOn = "";
  addEventListener("pointerdown", () => { downOn = location.hash; }, true);
  addEventListener("click", (event) => {
    if (!event.isTrusted || event.detail === 0) return; // a key, or the page itself
    const isBounce = event.detail > 1 && event.timeStamp - last.at < BOUNCE_MS && last.place !== location.hash;
    if (isBounce || downOn !== location.hash) {
      event.preventDefault();
      event.stopImmediatePropagation();
      return;
    }
    Object.assign(last, { at: event.timeStamp, place: location.hash });
  }, true);
}
