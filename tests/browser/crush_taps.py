"""Counts taps on the page itself: pointer events that a real touch made, not what the hand says of itself."""

from playwright.sync_api import Page

COUNT = """() => {
  window.tapsCounted = [];
  addEventListener("pointerdown", (event) => {
    if (!event.isTrusted || event.pointerType !== "touch") return;
    window.tapsCounted.push(event.target.closest("button, a, [role=button], label, summary")?.textContent.trim() ?? "");
  }, { capture: true });
}"""


def count_taps(page: Page) -> None:
    """From now on; call once after a page was loaded."""
    page.evaluate(COUNT)


def taps(page: Page) -> list[str]:
    """What was tapped since the last time, in words of the page, and begin anew."""
    counted: list[str] = page.evaluate("() => window.tapsCounted.splice(0)")
    return counted
