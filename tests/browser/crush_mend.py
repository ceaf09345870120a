"""Cows of the day opened again by the hand: changed, taken back, put back."""

from dataclasses import dataclass, replace
from random import Random

from playwright.sync_api import expect

from tests.browser.crush_hand import Hand
from tests.browser.crush_plans import CowPlan

CHANGED = 3
# Two taps that follow closer are taken for one of a glove that bounces.
A_SECOND_TAP_MS = 700


@dataclass(frozen=True)
class Mended:
    """What she is to be in the end, and for each further version whether it took her back."""

    last: CowPlan
    versions: list[bool]


def mend_some(hand: Hand, plans: list[CowPlan], dice: Random) -> dict[str, Mended]:
    """Three cows are scored anew; the last one put down is taken back and put back."""
    last = plans[-1].number
    settled = [plan for plan in plans if not plan.is_asked and plan.number != last]
    take_back_and_forth(hand, last)
    mended = {last: Mended(plans[-1], [True, False])}
    for plan in dice.sample(settled, CHANGED):
        mended[plan.number] = Mended(score_anew(hand, plan), [False])
    return mended


def score_anew(hand: Hand, plan: CowPlan) -> CowPlan:
    """By the list of the day's cows: she is opened, scored 1 (or 0), and kept again."""
    page = hand.page
    hand.tap(page.locator(".q-more > summary"))
    hand.tap(page.locator("nav a[href='#/cows']"))
    hand.tap(page.locator("button.d-cow").filter(has_text=plan.number).first)
    expect(page.locator("h1", has_text=f"cow {plan.number}")).to_be_visible()
    score = 0 if plan.score == 1 else 1
    hand.press(plan, f".score >> text=/^{score}/")
    hand.tap(page.locator("[data-save='main']:visible"))
    expect(page.get_by_text(f"Cow {plan.number} is noted.")).to_be_visible()
    return replace(plan, score=score)


def take_back_and_forth(hand: Hand, number: str) -> None:
    hand.tap(hand.page.get_by_role("button", name=f"Take back cow {number}"))
    expect(hand.page.get_by_text(f"Cow {number} is taken back.")).to_be_visible()
    hand.page.wait_for_timeout(A_SECOND_TAP_MS)
    hand.tap(hand.page.get_by_role("button", name=f"Put cow {number} back"))
    expect(hand.page.get_by_text(f"Cow {number} is back as it was.")).to_be_visible()
