"""A tap that was kept may sound and shake, and the screen may be held awake: each only where it was chosen."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.phone_modules import FOLDER, NOWHERE, module_alone

pytestmark = pytest.mark.xdist_group("browser")
# Counts tones and shakes in place of the phone's own loudspeaker and motor.
STUBS = """() => {
  window.tones = 0; window.shakes = 0;
  const Plain = window.AudioContext;
  const create = Plain.prototype.createOscillator;
  Plain.prototype.createOscillator = function () { window.tones += 1; return create.call(this); };
  navigator.vibrate = () => { window.shakes += 1; return true; };
}"""
TICK = """async ([address, phone]) => {
  (await import(address)).tick(phone);
  return [window.tones, window.shakes];
}"""
# A screen lock as the standard has it: given only in sight, taken away by the system when out of sight.
LOCKS = """() => {
  window.asked = 0; window.held = null;
  const request = async () => {
    window.asked += 1;
    const lock = new EventTarget();
    lock.released = false;
    lock.release = async () => { lock.released = true; lock.dispatchEvent(new Event("release")); };
    window.held = lock;
    return lock;
  };
  Object.defineProperty(navigator, "wakeLock", { value: { request } });
}"""
AWAKE = """async ([address, wanted]) => {
  const it = await import(address);
  await it.stayAwake(wanted);
  return it.isAwake();
}"""
BACK_IN_SIGHT = """async address => {
  await window.held.release();
  document.dispatchEvent(new Event("visibilitychange"));
  await Promise.resolve();
  return (await import(address)).isAwake();
}"""


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    with module_alone(browser, "tick.js") as module:
        yield module.page


@pytest.mark.parametrize(
    ("phone", "tones", "shakes"),
    [
        (None, 0, 0),
        ({}, 0, 0),
        ({"is_quiet": True, "is_still": True}, 0, 0),
        ({"is_quiet": False, "is_still": True}, 1, 0),
        ({"is_quiet": True, "is_still": False}, 0, 1),
        ({"is_quiet": False, "is_still": False}, 1, 1),
    ],
)
def test_a_tap_is_heard_and_felt_only_where_it_was_chosen(page, phone, tones, shakes) -> None:
    page.evaluate(STUBS)

    assert page.evaluate(TICK, [f"{NOWHERE}{FOLDER}tick.js", phone]) == [tones, shakes]


def test_the_screen_is_held_let_go_and_held_again_after_it_was_out_of_sight(page: Page) -> None:
    page.evaluate(LOCKS)
    awake = f"{NOWHERE}{FOLDER}awake.js"

    assert page.evaluate(AWAKE, [awake, True]) is True
    assert page.evaluate(BACK_IN_SIGHT, awake) is True
    assert page.evaluate("window.asked") == 2
    assert page.evaluate(AWAKE, [awake, False]) is False
    page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
    assert page.evaluate("window.asked") == 2, "once let go it is not asked for again"


def test_a_phone_that_refuses_is_not_said_to_be_awake(page: Page) -> None:
    refuse = (
        "Object.defineProperty(navigator, 'wakeLock', {value: {request: () => Promise.reject(Error('no'))}})"
    )
    page.evaluate(refuse)

    assert page.evaluate(AWAKE, [f"{NOWHERE}{FOLDER}awake.js", True]) is False
