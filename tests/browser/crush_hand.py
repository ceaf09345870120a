"""A hand that puts cows down on the crush page: it taps what is to be seen, as a trimmer would, and knows what it did.

    hand = Hand(phone.page, photos)
    hand.begin()
    hand.put_down(plan)                 # or, one act at a time: for act in hand.acts(plan): act()
    hand.stays[plan.number]             # when she was put into the crush and when she was kept

Every act ends only when the screen says what it should: from then on it must survive a kill.
"""

import re
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field

from playwright.sync_api import Locator, expect

from tests.browser.crush_fingers import Fingers
from tests.browser.crush_hand_foot import FootHand
from tests.browser.crush_plans import ALL_FOUR, CowPlan

LISTED = "button.q-next, button.q-row, button.q-tile"
NUMBER = r"(^|\s){}$"


@dataclass
class Stay:
    """By the clock: when she was put into the crush, and when the page said that she is kept."""

    since: float
    until: float = 0.0

    @property
    def seconds(self) -> float:
        return self.until - self.since


@dataclass
class Hand(Fingers):
    """Puts cows down as they were planned."""

    stays: dict[str, Stay] = field(default_factory=dict)

    def begin(self) -> None:
        """The check before the first cow, each line ticked."""
        expect(self.page.locator(".tick-row").first).to_be_visible()
        for line in self.page.locator(".tick-row").all():
            self.tap(line)
        self.tap(self.button("All checked: begin"))
        expect(self.page.locator(".line")).to_be_visible()
        expect(self.page.locator("a[href='#/number']").first).to_be_visible()

    def put_down(self, plan: CowPlan) -> None:
        for act in self.acts(plan):
            act()

    def acts(self, plan: CowPlan) -> Iterator[Callable[[], None]]:
        """All that is to be done for her, one after the other; each finds its own way to where it belongs."""
        yield lambda: self.bring(plan)
        if plan.score is not None:
            yield lambda: self.press(plan, f".score >> text=/^{plan.score}/")
        if plan.plain != ALL_FOUR and not plan.is_uncut:
            yield lambda: self.press(plan, f".rest >> text='{plan.plain}'")
        for foot in plan.feet:
            yield from FootHand(self, plan, foot).acts()
        if plan.has_band:
            yield lambda: self.press(plan, "text=/^Belly band/")
        yield from self._more(plan)
        yield lambda: self.keep(plan)

    def bring(self, plan: CowPlan) -> None:
        """Put her into the crush: from the list where she stands on it, else by her number."""
        listed = self.page.locator(LISTED).filter(has=self._number(plan.number))
        if listed.count():
            self.tap(listed.first)
        else:
            self.tap(self.page.locator("a[href='#/number']").first)
            self.type_number(plan.number)
            row = self.page.locator(".k-add" if plan.is_new else ".k-hit").filter(has_text=plan.number)
            self.tap(row.first)
        self.stays.setdefault(plan.number, Stay(time.time()))
        expect(self.page.locator("h1", has_text=plan.number)).to_be_visible()

    def type_number(self, number: str) -> None:
        keys = self.page.locator(".k-keys")
        for sign in number:
            if sign.isalpha():
                self.tap(keys.get_by_role("button", name="Letters"))
            self.tap(keys.get_by_role("button", name=sign, exact=True))
        expect(self.page.locator("#k-number")).to_have_value(number)

    def be_at(self, plan: CowPlan, foot: str = "") -> None:
        """Find the way to her, or to one of her feet, from wherever the page stands."""
        if not self._is_at_a_cow():
            self.bring(plan)
        place = self.page.url.partition("#")[2]
        is_there = place.count("/") == (3 if foot else 2) and place.endswith(foot)
        if is_there:
            return
        if place.count("/") == 3:
            self.leave_sheet()
            self.tap(self.page.locator(".bar-second" if not foot else f".foot-tabs a[href$='/{foot}']"))
        if foot and place.count("/") == 2:
            self.tap(self.page.locator(f"[data-foot='{foot}']"))
        expect(self.page.locator(".sole" if foot else ".feet")).to_be_visible()

    def leave_sheet(self) -> None:
        sheet = self.page.locator(".sheet")
        if sheet.count():
            self.tap(sheet.get_by_role("button", name="Close"))
            expect(sheet).to_have_count(0)

    def press(self, plan: CowPlan, what: str) -> None:
        """Press a button of hers unless it is pressed already."""
        self.be_at(plan)
        self.press_here(
            self.page.locator("main").locator(what).locator("xpath=ancestor-or-self::button[1]").first
        )

    def keep(self, plan: CowPlan) -> None:
        """The one tap that keeps her, from wherever she is seen; and the answer where the page is to ask."""
        if plan.is_uncut or not self._is_at_a_cow():
            self.be_at(plan)
        self.tap(self.page.locator(f"[data-save='{'no-cut' if plan.is_uncut else 'main'}']:visible"))
        if plan.is_asked:
            self.tap(self.page.locator("[data-save='sure']:visible"))
        expect(self.page.get_by_text(f"Cow {plan.number} is noted.")).to_be_visible()
        self.stays[plan.number].until = time.time()

    def _more(self, plan: CowPlan) -> Iterator[Callable[[], None]]:
        words = {"Note": plan.note, "For the vet": plan.for_vet}
        for label, text in words.items():
            if text:
                yield lambda label=label, text=text: self._write_more(plan, label, text)
        if plan.told:
            yield lambda: self._told(plan)
        for _ in range(plan.photos):
            yield lambda: self._photo(plan)

    def _write_more(self, plan: CowPlan, label: str, text: str) -> None:
        self.be_at(plan)
        self.write(self.open_part("Note, picture, vet").get_by_label(label), text)

    def _told(self, plan: CowPlan) -> None:
        self.be_at(plan)
        self.write(self.page.get_by_label("Whom you told"), plan.told)

    def _photo(self, plan: CowPlan) -> None:
        self.be_at(plan)
        self.take_photo(self.open_part("Note, picture, vet"))

    def _is_at_a_cow(self) -> bool:
        return self.page.url.partition("#")[2].startswith("/cow/")

    def _number(self, number: str) -> Locator:
        return self.page.locator("b", has_text=re.compile(NUMBER.format(number)))
