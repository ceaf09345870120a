"""The part of the hand that works on one foot: places of the sole, what goes on, signs, measures, pictures."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from playwright.sync_api import Locator, expect

from tests.browser.crush_plans import CowPlan, FootPlan, Seen

if TYPE_CHECKING:
    from tests.browser.crush_hand import Hand

SIGNS = {
    "has_pain": "pain to the hoof testers",
    "sensitive_tissue": "sensitive tissue open",
    "deep_infection": "looks infected deep inside",
}


@dataclass
class FootHand:
    hand: Hand
    cow: CowPlan
    plan: FootPlan

    def acts(self) -> Iterator[Callable[[], None]]:
        """Signs first, as one looks before one cuts; then what is seen, what goes on, and the rest."""
        plan = self.plan
        for sign in plan.signs:
            yield lambda sign=sign: self._press_in("Signs", SIGNS[sign])
        if plan.block_off:
            yield self._block_off
        if plan.whole:
            yield self._whole
        for seen in plan.seen:
            yield from self._see(seen)
        for item in plan.goes_on:
            yield lambda item=item: self._put_on(item)
        if plan.wall_mm is not None:
            yield lambda: self._measure("Front wall", plan.wall_mm)
        if plan.toe_angle is not None:
            yield lambda: self._measure("Toe angle", plan.toe_angle)
        if plan.look_again is not None:
            yield lambda: self._press_in("Look again", f"in {plan.look_again} days")
        if plan.for_vet:
            yield self._for_vet
        for _ in range(plan.photos):
            yield self._photo

    def _see(self, seen: Seen) -> Iterator[Callable[[], None]]:
        yield lambda: self._lesion(seen)
        if seen.stage:
            yield lambda: self._press_in_sheet(seen, f"Stage >> {seen.stage}")
        if seen.severity is not None:
            yield lambda: self._press_in_sheet(seen, f"How bad >> {seen.severity}")

    def _lesion(self, seen: Seen) -> None:
        sheet = self._sheet_at(seen)
        choice = sheet.locator(f"[data-lesion='{seen.lesion}']")
        if not choice.count():
            self.hand.tap(sheet.get_by_role("button", name="More that is seen"))
        self.hand.tap(choice)
        expect(sheet.get_by_role("group", name="How bad")).to_be_visible()

    def _press_in_sheet(self, seen: Seen, what: str) -> None:
        group, _, word = what.partition(" >> ")
        buttons = self._sheet_at(seen).get_by_role("group", name=group).get_by_role("button")
        self.hand.press_here(buttons.filter(has_text=re.compile(rf"^\s*{re.escape(word)}\s")).first)

    def _put_on(self, item: str) -> None:
        """On the sheet of the place that was put down last; each foot of the mix has its own."""
        button = self._sheet_at(self.plan.seen[-1]).locator(f"[data-action='{item}']")
        self.hand.press_here(button)

    def _sheet_at(self, seen: Seen) -> Locator:
        """The sheet of that place, opened by a tap on the sole where it is not open."""
        hand = self.hand
        hand.be_at(self.cow, self.plan.foot)
        place = hand.page.locator(f"[data-place='{seen.claw} {seen.zone}']")
        if "is-chosen" not in (place.get_attribute("class") or ""):
            hand.leave_sheet()
            hand.tap(place)
        expect(hand.page.locator(".sheet")).to_be_visible()
        return hand.page.locator(".sheet")

    def _part(self, title: str) -> Locator:
        self.hand.be_at(self.cow, self.plan.foot)
        self.hand.leave_sheet()
        return self.hand.open_part(title)

    def _press_in(self, title: str, word: str) -> None:
        self.hand.press_here(self._part(title).get_by_role("button", name=word))

    def _measure(self, label: str, value: int | None) -> None:
        self.hand.write(self._part("Measures").get_by_label(label), str(value))

    def _for_vet(self) -> None:
        self.hand.write(self._part("Signs").get_by_label("For the vet"), self.plan.for_vet)

    def _photo(self) -> None:
        self.hand.take_photo(self._part("Picture of this foot"))

    def _block_off(self) -> None:
        self.hand.be_at(self.cow, self.plan.foot)
        button = self.hand.page.locator("main button.is-due")
        self.hand.tap(button)
        expect(button).to_have_attribute("aria-pressed", "true")

    def _whole(self) -> None:
        self.hand.be_at(self.cow, self.plan.foot)
        self.hand.tap(self.hand.page.locator(".row-of-three").get_by_role("button", name=self.plan.whole))
        expect(self.hand.page.locator(".done-list")).to_contain_text(self.plan.whole)
