"""Times of taps as the page itself sees them: put into the page before the first tap, read out after the last one.

Two measures of each tap. Event Timing (W3C): from the touch to the next frame that the browser painted, the longest
event of the interaction, in steps of 8 ms; what took under 16 ms is not told and counts as 16. And by hand: from
pointerdown to the first task after the next animation frame. A third says when what the tap changed stood on the
screen: a change is written to the phone's disk first.
"""

from dataclasses import dataclass
from math import ceil

from playwright.sync_api import Page

WATCH = """() => {
  if (window.tapTimes) return;
  const times = { taps: 0, events: {}, frames: [], shown: [] };
  window.tapTimes = times;
  const afterPaint = (then) => requestAnimationFrame(() => {
    const channel = new MessageChannel();
    channel.port1.onmessage = () => then(performance.now());
    channel.port2.postMessage(0);
  });
  const wordsOf = (target) => target?.closest("button, a, summary, label, g")?.textContent.trim().replace(/\\s+/g, " ");
  new PerformanceObserver((list) => list.getEntries().forEach((event) => {
    const { interactionId, duration, name, target } = event;
    if (!interactionId || !/^pointer|^click/.test(name)) return;
    const waited = Math.round(event.processingStart - event.startTime);
    const worked = Math.round(event.processingEnd - event.processingStart);
    const longest = times.events[interactionId];
    const words = `${location.hash} ${wordsOf(target) ?? ""} (${name}, waited ${waited}, worked ${worked})`;
    if (!longest || longest.duration < duration) times.events[interactionId] = { duration, words };
  })).observe({ type: "event", durationThreshold: 16 });
  addEventListener("pointerdown", (event) => {
    times.taps += 1;
    afterPaint((now) => times.frames.push(now - event.timeStamp));
  }, { capture: true });
  let tapped = null;
  addEventListener("pointerup", (event) => { tapped = event.timeStamp; }, { capture: true });
  new MutationObserver((changes) => {
    const isIn = (target, what) => (target.closest ? target : target.parentElement)?.closest(what);
    const isOurs = ({ target }) => isIn(target, "main") && !isIn(target, ".crush-clock");
    if (tapped === null || !changes.some(isOurs)) return;
    const since = tapped;
    tapped = null;
    afterPaint((now) => times.shown.push(now - since));
  }).observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
}"""
NOT_TOLD_MS = 16.0
SLOWEST = 12


@dataclass(frozen=True)
class TapTimes:
    """Milliseconds of each tap; the slowest in words."""

    to_paint: list[float]
    to_frame: list[float]
    to_change: list[float]
    slowest: list[str]


def watch_taps(page: Page) -> None:
    """Call once a page was loaded."""
    page.evaluate(WATCH)


def tap_times(page: Page) -> TapTimes:
    """All since `watch_taps`."""
    page.wait_for_timeout(300)  # the browser tells of events a while after them
    told = page.evaluate("() => window.tapTimes")
    events = sorted(told["events"].values(), key=lambda event: event["duration"])
    slow = [event["duration"] for event in events]
    slowest = [f"{event['duration']:.0f} ms {event['words']}" for event in events[: -SLOWEST - 1 : -1]]
    quick = [NOT_TOLD_MS] * max(0, told["taps"] - len(slow))
    return TapTimes(sorted([*quick, *slow]), sorted(told["frames"]), sorted(told["shown"]), slowest)


def share_within(times: list[float], share: float = 0.95) -> float:
    """The time that `share` of them do not pass (nearest rank)."""
    return sorted(times)[ceil(share * len(times)) - 1]
