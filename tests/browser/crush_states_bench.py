"""States of what stands around the cow: kit, wash-down, sign-off, farm, this phone."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from playwright.sync_api import expect

if TYPE_CHECKING:
    from tests.browser.crush_states import Walk

WASH = {"wash-substance": "peracetic acid", "wash-dilution": "1:100", "wash-contact_minutes": "5"}


def bench_states(walk: Walk) -> Iterator[str]:
    yield from _kit(walk)
    yield from _wash(walk)
    yield from _knives(walk)
    walk.go("farm")
    yield "farm"
    walk.go("phone")
    expect(walk.page.get_by_role("heading", name="Visits on this phone")).to_be_visible()
    yield "phone"
    yield from _sign_off(walk)


def _kit(walk: Walk) -> Iterator[str]:
    walk.go("kit")
    yield "kit"
    more = walk.page.get_by_role("button", name="1 more", exact=True)
    walk.hand.tap(more.first)
    expect(walk.page.get_by_text("1 more by hand").first).to_be_visible()
    yield "kit put right"
    field = walk.page.locator(".kit input").first
    field.fill("lots")
    field.blur()
    expect(field).to_have_attribute("aria-invalid", "true")
    yield "kit with a wrong number"


def _wash(walk: Walk) -> Iterator[str]:
    page, hand = walk.page, walk.hand
    walk.go("wash")
    yield "wash"
    hand.tap(hand.button("Keep this wash-down"))
    expect(page.locator(".field-wrong").first).to_be_visible()
    yield "wash not all filled in"
    for name, words in WASH.items():
        page.locator(f"#{name}").fill(words)
    hand.tap(hand.button("Keep this wash-down"))
    expect(page.locator("h1", has_text="Washed down")).to_be_visible()
    yield "wash kept"
    hand.tap(page.get_by_role("button", name="Change the").first)
    yield "wash to change"
    hand.tap(hand.button("Leave it as it was"))


def _knives(walk: Walk) -> Iterator[str]:
    page, hand = walk.page, walk.hand
    walk.go("knives")
    yield "knives none in hand"
    hand.tap(page.locator("[data-blade]", has_text="Red handle"))
    expect(page.locator("h1", has_text="Red handle")).to_be_visible()
    yield "knives one in hand"
    hand.tap(page.get_by_role("button", name="It drags"))
    expect(page.locator(".blade-asks")).to_contain_text("Which one next?")
    yield "knives asked which one next"
    hand.tap(page.get_by_role("button", name="Take Blue handle"))
    expect(page.locator("h1", has_text="Blue handle")).to_be_visible()
    hand.tap(page.get_by_role("button", name="Cracked or chipped"))
    yield "knives asked which is broken"
    hand.tap(page.get_by_role("button", name="Grey disc", exact=True))
    yield "knives asked what it is"
    hand.tap(page.get_by_role("button", name="Cracked", exact=True))
    expect(page.locator(".blade-out")).to_be_visible()
    yield "knives one out of use"
    hand.tap(page.get_by_role("button", name="Done", exact=True))


def _sign_off(walk: Walk) -> Iterator[str]:
    page, hand = walk.page, walk.hand
    walk.go("sign-off")
    yield "sign-off"
    hand.tap(hand.button("Finish the visit"))
    expect(page.locator(".field-wrong")).to_be_visible()
    yield "sign-off without a name"
    page.locator("#sign-received_by").fill("The herd manager")
    hand.tap(hand.button("Finish the visit"))
    expect(page.locator("h1", has_text="signed off")).to_be_visible()
    yield "sign-off done"
    walk.go("")
    yield "queue after the sign-off"
