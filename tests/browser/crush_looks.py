"""What every state of the crush page must hold, whoever looks at it: measured on the page as it is drawn."""

from playwright.sync_api import Page

SMALLEST, MAIN, LINE = 56, 64, 44
LEAST_CONTRAST = 7.0
# Reached with the thumb: everything that answers a tap, but the places of the sole, which have a test of their own.
ACTING = "button, a[href], input, select, textarea, summary"
MAIN_ONES = "[data-save='main'], .act-main, .bar-main, .k-keys:not(.k-letters) button"
TOO_SMALL = """([acting, main, least, leastMain, leastLine]) => {
  const inLabel = "input[type=checkbox], input[type=file], input.unseen";
  const whole = (one) => (one.matches(inLabel) ? one.closest("label") : one);
  const isSeen = (one) => one.checkVisibility({ visibilityProperty: true }) && one.getClientRects().length;
  return [...document.querySelectorAll(acting)].map(whole).filter(isSeen).flatMap((one) => {
    const { width, height } = one.getBoundingClientRect();
    const need = one.closest(".line") ? leastLine : one.matches(main) ? leastMain : least;
    const words = (one.textContent.trim() || one.id || one.className).replace(/\\s+/g, " ").slice(0, 40);
    const tall = height < need - 0.5 && `${words}: ${Math.round(height)} high, not ${need}`;
    const wide = width < (one.closest(".line") ? leastLine : least) - 0.5 && `${words}: ${Math.round(width)} wide`;
    return [tall, wide].filter(Boolean);
  });
}"""
TOO_PALE = """([acting, least]) => {
  const parts = (colour) => {
    const pen = document.createElement("canvas").getContext("2d", { willReadFrequently: true });
    pen.fillStyle = colour;
    pen.fillRect(0, 0, 1, 1);
    return [...pen.getImageData(0, 0, 1, 1).data];
  };
  const light = (rgb) => {
    const linear = (x) => (x <= 0.04045 ? x / 12.92 : ((x + 0.055) / 1.055) ** 2.4);
    const [r, g, b] = rgb.slice(0, 3).map((part) => linear(part / 255));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const ground = (one) => {
    for (let at = one; at; at = at.parentElement) {
      const { backgroundColor, backgroundImage } = getComputedStyle(at);
      const colour = parts(backgroundImage.match(/gradient.*?(rgba?\\([^)]*\\))/)?.[1] ?? backgroundColor);
      if (colour[3] > 0) return colour;
    }
    return [255, 255, 255, 255];
  };
  const seen = [...document.querySelectorAll(acting)].filter((one) => one.checkVisibility() && one.textContent.trim());
  return seen.flatMap((one) => {
    const [a, b] = [light(parts(getComputedStyle(one).color)), light(ground(one))];
    const ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    const words = one.textContent.trim().replace(/\\s+/g, " ").slice(0, 40);
    return ratio < least ? [`${words}: ${ratio.toFixed(1)} to 1`] : [];
  });
}"""
# 24 points just inside the rim (half the line between two places is a pixel wide) of a circle of 56 px around the
# middle of each place, and the middle itself.
NO_ROOM = """(wide) => [...document.querySelectorAll("[data-place]")].flatMap((place) => {
  place.scrollIntoView({ block: "center" });
  const words = place.querySelector("text");
  const at = new DOMPoint(Number(words.getAttribute("x")), Number(words.getAttribute("y")) - 7);
  const middle = at.matrixTransform(place.getScreenCTM());
  const rim = [...Array(24).keys()].map((step) => [Math.cos(step * Math.PI / 12), Math.sin(step * Math.PI / 12)]);
  const missed = [[0, 0], ...rim].filter(([x, y]) => {
    const hit = document.elementFromPoint(middle.x + x * (wide / 2 - 1), middle.y + y * (wide / 2 - 1));
    return hit?.closest("[data-place]") !== place;
  });
  return missed.length ? [`${place.dataset.place}: ${missed.length} of 25 points miss it`] : [];
})"""
WIDER = "document.documentElement.scrollWidth - document.documentElement.clientWidth"


def too_small(page: Page) -> list[str]:
    """Whatever acts and is smaller than a glove: 56 px, main ones 64 high, the line at the top 44."""
    found: list[str] = page.evaluate(TOO_SMALL, [ACTING, MAIN_ONES, SMALLEST, MAIN, LINE])
    return found


def too_pale(page: Page) -> list[str]:
    """Buttons and links that stand out from their ground by less than 7 to 1."""
    found: list[str] = page.evaluate(TOO_PALE, ["button, a[href]", LEAST_CONTRAST])
    return found


def no_room_for_a_thumb(page: Page) -> list[str]:
    """Places of the sole that a circle of 56 px around their middle leaves."""
    found: list[str] = page.evaluate(NO_ROOM, SMALLEST)
    return found


def wider_than_the_screen(page: Page) -> int:
    wider: int = page.evaluate(WIDER)
    return wider
