"""The crush page timed in a process of its own (a database and a server of its own): started by bench_crush_taps.

Prints one line of JSON: times of every tap over sixty cows, and of cold starts, the processor slowed four times.
"""

import json
import os
import sys
from dataclasses import asdict
from pathlib import Path
from time import perf_counter
from types import SimpleNamespace

import django

django.setup()

from playwright.sync_api import Locator, Page, expect, sync_playwright  # noqa: E402

from tests.bench.visits.tap_times import TapTimes, tap_times, watch_taps  # noqa: E402
from tests.browser.crush_hand import Hand  # noqa: E402
from tests.browser.crush_mix import sixty_cows  # noqa: E402
from tests.browser.crush_phone import Phone  # noqa: E402
from tests.browser.crush_photos import camera  # noqa: E402
from tests.browser.crush_server import Server  # noqa: E402
from tests.browser.crush_yard import Yard, make_yard  # noqa: E402
from tests.straight_tables import lay_tables  # noqa: E402

SEED, COWS, MORE_COWS, STARTS = 1125, 60, 480, 5
SLOWER = 4
BARE = "<main><button onclick='this.textContent = Math.random()' style='height:64px'>Tap</button></main>"
BARE_TAPS = 120
BEFORE_MS, AFTER_MS = 50, 150
# The middle of what is to be tapped, scrolled to where neither line nor bar covers it.
IN_REACH = """(target) => {
  const middle = () => {
    const { left, top, width, height } = target.getBoundingClientRect();
    return [left + width / 2, top + height / 2];
  };
  if (!target.contains(document.elementFromPoint(...middle()))) target.scrollIntoView({ block: "center" });
  return middle();
}"""
USABLE = """() => {
  const see = () => {
    const isUsable = document.querySelector("main h1")?.textContent.trim() && document.querySelector("main .q-next");
    if (!isUsable) return requestAnimationFrame(see);
    requestAnimationFrame(() => setTimeout(() => { window.usableAt = performance.now(); }));
  };
  see();
}"""


class CalmHand(Hand):
    """Lets the page alone before and after each tap: what drives the browser works in the same thread as the page,
    slowed as much, and no trimmer taps five times a second."""

    def tap(self, target: Locator) -> None:
        x, y = target.evaluate(IN_REACH)
        self.page.wait_for_timeout(BEFORE_MS)
        self.page.touchscreen.tap(x, y)
        self.page.wait_for_timeout(AFTER_MS)


def main(folder: Path, cows: int) -> dict[str, object]:
    lay_tables()
    yard = make_yard(MORE_COWS)
    with sync_playwright() as playwright, Server(folder / "server") as server:
        browser = SimpleNamespace(browser_type=playwright.chromium)
        with Phone(browser, folder / "phone", server) as phone:
            phone.be(yard.house.trimmer)
            phone.open(yard.path)
            phone.wait_until_kept()
            expect(phone.page.locator("h1", has_text="Before the first cow")).to_be_visible()
            server.stop()
            times = taps(phone, cows)
            bare = bare_taps(phone)
            starts = [cold_start(phone, yard) for _ in range(STARTS)]
    return {
        **asdict(times),
        "bare": bare,
        "starts": [start for start, _ in starts],
        "answers": [late for _, late in starts],
    }


def taps(phone: Phone, cows: int) -> TapTimes:
    phone.open()
    hand = CalmHand(phone.page, camera(SEED))
    hand.begin()
    slow_down(phone, phone.page)
    watch_taps(phone.page)
    for plan in sixty_cows(SEED)[:cows]:
        hand.put_down(plan)
    return tap_times(phone.page)


def bare_taps(phone: Phone) -> list[float]:
    """The same measure of a page with one button that changes its own word: what machine and browser take alone."""
    page = phone.context.new_page()
    page.set_content(BARE)
    slow_down(phone, page)
    watch_taps(page)
    hand = CalmHand(page, camera(SEED))
    for _ in range(BARE_TAPS):
        hand.tap(page.locator("button"))
    times = tap_times(page)
    page.close()
    return times.to_paint


def cold_start(phone: Phone, yard: Yard) -> tuple[float, float]:
    """Seconds from nothing until title and first button are painted, and until that button has answered a tap."""
    phone.kill()
    page = phone.reopen()
    page.add_init_script(f"({USABLE})()")
    slow_down(phone, phone.page)
    began = perf_counter()
    phone.open(yard.path)
    page.locator("main .q-next").tap()
    expect(page.locator(".feet")).to_be_visible()
    answered = perf_counter() - began
    return page.evaluate("() => window.usableAt") / 1000, answered


def slow_down(phone: Phone, page: Page) -> None:
    chromium = phone.context.new_cdp_session(page)
    chromium.send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})


if __name__ == "__main__":
    os.environ["DJANGO_ALLOW_ASYNC_UNSAFE"] = "true"
    print(json.dumps(main(Path(sys.argv[1]), int(sys.argv[2]))))
