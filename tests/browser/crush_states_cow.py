"""States of the cow in the crush and of one foot of hers."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import TYPE_CHECKING

from playwright.sync_api import expect

from tests.browser import crush_plans as plans
from tests.browser.crush_hand_foot import FootHand
from tests.browser.crush_plans import CowPlan, FootPlan, Seen
from tests.browser.crush_yard import BLOCKED, LATE

if TYPE_CHECKING:
    from tests.browser.crush_states import Walk

LET_GO = re.compile("let her go")
NEW, LAME, PLAIN = "9003", "227", "205"
LONG_AGO = """async ([visit, minutes]) => {
  const store = await import("/static/visits/crush/store.js");
  const { drafts } = await store.loadVisit(visit);
  const [cowKey, draft] = [...drafts].at(-1);
  const started_at = new Date(Date.now() - minutes * 60000).toISOString();
  await store.putDraft(visit, cowKey, { ...draft, started_at });
}"""


def cow_states(walk: Walk) -> Iterator[str]:
    yield from _cows(walk)
    yield from _foot(walk, plans.sound(LAME))
    yield from _asked(walk)


def _cows(walk: Walk) -> Iterator[str]:
    hand, page = walk.hand, walk.page
    for number, name in (
        (NEW, "cow new"),
        (LATE, "cow late in calf"),
        (BLOCKED[0], "cow with history and a block"),
    ):
        hand.bring(plans.sound(number))
        yield name
        if number == BLOCKED[0]:
            hand.be_at(plans.sound(number), "LH")
            yield "foot with a block to come off"
            hand.be_at(plans.sound(number))
        hand.tap(page.get_by_role("button", name=LET_GO))
        expect(page.locator("a[href='#/number']").first).to_be_visible()
    hand.bring(plans.sound(PLAIN))
    yield "cow"
    page.evaluate(LONG_AGO, [walk.yard.visit.pk, 20])
    walk.phone.open()
    expect(page.locator(".crush-caution")).to_be_visible()
    yield "cow too long in the crush"
    hand.open_part("Note")
    yield "cow with the rest unfolded"
    hand.keep(plans.sound(PLAIN))


def _foot(walk: Walk, cow: CowPlan) -> Iterator[str]:
    hand = walk.hand
    hand.bring(cow)
    hand.be_at(cow, "LH")
    yield "foot"
    seen = Seen("SU", "lateral", 4)
    foot = FootHand(hand, cow, FootPlan("LH", (seen,), ("block wood", "wrap")))
    sheet = foot._sheet_at(seen)
    yield "sheet lesions"
    hand.tap(sheet.get_by_role("button", name="More that is seen"))
    yield "sheet all lesions"
    foot._lesion(seen)
    yield "sheet offers"
    for item in ("block wood", "wrap"):
        foot._put_on(item)
    yield "sheet block and wrap on"
    hand.leave_sheet()
    foot._lesion(Seen("DD", "skin", 10))
    yield "sheet stages"
    hand.leave_sheet()
    yield "foot with findings"
    for title in ("Signs", "single steps", "Measures", "Picture", "Look again"):
        hand.open_part(title)
    hand.take_photo(hand.open_part("Picture"))
    yield "foot with all unfolded"


def _asked(walk: Walk) -> Iterator[str]:
    """What is asked once, what is refused, what is the vet's."""
    hand, page = walk.hand, walk.page
    hand.keep(CowPlan(LAME, is_asked=True))  # dermatitis without its stage
    slight = plans.white_line("206")
    _down_to_keep(walk, slight)
    hand.tap(page.locator("[data-save='main']:visible"))
    expect(page.locator(".asked-box")).to_be_focused()
    yield "foot asked Sure?"
    hand.tap(page.locator("[data-save='sure']:visible"))
    expect(page.get_by_text("Cow 206 is noted.")).to_be_visible()
    ulcer = CowPlan("207", feet=(FootPlan("RF", (Seen("SU", "medial", 4),)),))
    _down_to_keep(walk, ulcer)
    hand.be_at(ulcer, "RF")
    hand.leave_sheet()
    hand.press_here(hand.open_part("single steps").get_by_role("button", name="wooden block, inner claw"))
    hand.tap(page.locator("[data-save='main']:visible"))
    expect(page.locator(".asked-box")).to_contain_text("sore")
    yield "foot refused"
    hand.tap(page.get_by_role("button", name="Mend it"))
    hand.be_at(ulcer)
    hand.tap(page.locator("[data-save='main']:visible"))
    yield "cow refused"
    hand.tap(page.get_by_role("button", name="Mend it"))
    hand.tap(page.get_by_role("button", name=LET_GO))
    yield "cow asked whether she goes"
    hand.tap(page.get_by_role("button", name="Let her go", exact=True))
    vet = plans.for_the_vet("208")
    _down_to_keep(walk, vet)
    hand.be_at(vet)
    yield "cow for the vet"
    hand.keep(vet)


def _down_to_keep(walk: Walk, plan: CowPlan) -> None:
    """All of her but the last tap."""
    *acts, _ = walk.hand.acts(plan)
    for act in acts:
        act()
