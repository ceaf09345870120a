"""Every state of the crush page, one after the other, as a day brings them: each is reached by taps and then named.

    for name in Walk(phone, server, yard).states(): …    # the page stands in that state now

One list for all that is asked of every state: readable by everybody, fitting the screen, large enough, pictured.
"""

from collections.abc import Iterator
from dataclasses import dataclass, field

from playwright.sync_api import Page, expect

from tests.browser import crush_plans as plans
from tests.browser.crush_hand import Hand
from tests.browser.crush_phone import Phone, Server
from tests.browser.crush_photos import camera
from tests.browser.crush_states_bench import bench_states
from tests.browser.crush_states_cow import cow_states
from tests.browser.crush_states_line import line_states
from tests.browser.crush_yard import LATE, Yard
from visits.models import Visit


@dataclass
class Walk:
    """`begin` to `days`; the yard's visit and the `small` one after it are planned and not begun yet."""

    phone: Phone
    server: Server
    yard: Yard
    small: Visit
    hand: Hand = field(init=False)

    @property
    def page(self) -> Page:
        return self.phone.page

    def states(self) -> Iterator[str]:
        self.phone.open(self.yard.path)
        self.phone.wait_until_kept()
        self.hand = Hand(self.page, camera(3))
        yield from self._before()
        yield from self._keypad()
        yield from cow_states(self)
        yield from self._queue()
        yield from bench_states(self)
        yield from line_states(self)

    def go(self, face: str) -> None:
        """To a face by its address, as the links of the queue do."""
        self.page.evaluate("(hash) => { location.hash = hash; }", f"#/{face}")
        expect(self.page.locator(f".face-{face.split('/')[0] or 'queue'}")).to_be_visible()

    def _before(self) -> Iterator[str]:
        expect(self.page.locator("h1", has_text="Before the first cow")).to_be_visible()
        yield "begin"
        self.page.locator(".tick-row").first.tap()
        self.hand.button("All checked: begin").tap(force=True)
        yield "begin not all ticked"
        for line in self.page.locator(".tick-row").all()[1:]:
            line.tap()
        self.hand.tap(self.hand.button("All checked: begin"))
        expect(self.page.locator("a[href='#/number']").first).to_be_visible()
        yield "queue full"
        self.go("begin")
        yield "begin done"

    def _keypad(self) -> Iterator[str]:
        self.go("number")
        yield "keypad"
        self.hand.type_number("23")
        yield "keypad narrowed"
        self._type("231")
        yield "keypad exact"
        self._type("9001")
        yield "keypad unknown"
        self._type("UK 100002 500001")
        yield "keypad misread tag"
        self._type("")
        self.hand.tap(self.page.get_by_role("button", name="Letters"))
        yield "keypad letters"
        self.go("")

    def _type(self, number: str) -> None:
        self.page.locator("#k-number").fill(number)

    def _queue(self) -> Iterator[str]:
        self.hand.put_down(plans.bare_ulcer("204"))
        self.hand.put_down(plans.sound(LATE))
        self.hand.put_down(plans.for_the_vet("9002"))
        yield "queue with some done"
        self.go("cows")
        yield "cows"
        self.hand.tap(self.page.locator(".d-back").first)
        yield "cows one asked to take back"
        self.hand.tap(self.page.get_by_role("button", name="Yes, take her back"))
        expect(self.page.locator("h2", has_text="Taken back")).to_be_visible()
        yield "cows one taken back"
        self.go("")
        yield "queue after taking back"
        self.go("cows")
        self.hand.tap(self.page.locator(".d-cow").first)
        expect(self.page.locator("h1", has_text="Mend cow")).to_be_visible()
        yield "cow to mend"
        self.go("")
