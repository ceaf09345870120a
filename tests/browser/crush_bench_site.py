"""A phone in one hand and a server of its own behind it, for the bench around the cows."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from decimal import Decimal

from django.conf import settings
from django.test import Client
from playwright.sync_api import Browser, ConsoleMessage, Page, expect

from farms.models import Contact
from tests.browser.crush_bench_day import did, foot
from tests.browser.crush_harness import CrushDay, call, cow_writing, make_crush_day
from tests.browser.crush_phone import IS_KEPT, ONE_HAND
from tests.browser.crush_server import Server
from tests.browser.queue_face import Office
from tests.factories import make_consumable
from visits.domain.kit.stock_kinds import ConsumableKind
from visits.models import Visit

LONGEST_MS = 15_000
# The browser itself says of each request that it failed; that is no fault of the page.
NO_NETWORK = ("ERR_INTERNET_DISCONNECTED", "ERR_CONNECTION_REFUSED")
ULCER = {"lesion": "SU", "claw": "lateral", "zone": 4, "zone_map": "ILC", "severity": 3, "dd_stage": ""}


@dataclass
class Bench:
    """The day, the phone, the server; what the browser complained of."""

    day: CrushDay
    server: Server
    page: Page
    complaints: list[str] = field(default_factory=list)

    def open(self, face: str = "") -> Page:
        """The page at that face, everything of it fetched."""
        self.page.goto(f"{self.server.address}{self.day.path}#/{face}")
        expect(self.page.get_by_role("heading", level=1)).not_to_have_text("Fetching the visit")
        return self.page

    def go_to(self, path: str) -> Page:
        self.page.goto(self.server.address + path)
        return self.page

    def comes_true(self, holds: Callable[[], bool]) -> None:
        """Wait until it holds of what the server has."""
        for _ in range(LONGEST_MS // 250):
            self.server.bring_back()
            if holds():
                return
            self.page.wait_for_timeout(250)
        assert holds()

    def visit(self) -> Visit:
        return Visit.objects.within(self.day.house.scope).get(pk=self.day.visit.pk)

    def waiting(self) -> int:
        waits = call(self.page, "store.js", "countWaiting", self.day.visit.pk)["waiting"]
        assert isinstance(waits, int)
        return waits

    def put_down_block(self, **signs: bool) -> None:
        """A cow with a sore outer claw and a wooden block on the inner one, as the cow's own page keeps her."""
        writing = cow_writing(self.day, self.day.house.cow.pk)
        blocked = foot(
            "LH", did("relief", "lateral"), did("block", "medial", "wood"), findings=[ULCER], **signs
        )
        content = writing["content"]
        assert isinstance(content, dict)
        content["entry"] = {**content["entry"], "feet": [blocked]}
        call(self.page, "store.js", "addWriting", writing)

    def wait_until_kept(self) -> None:
        self.page.wait_for_function(IS_KEPT)

    def _told(self, message: ConsoleMessage) -> None:
        if message.type in ("error", "warning") and not any(word in message.text for word in NO_NETWORK):
            self.complaints.append(f"{self.page.url}: {message.text}")


@contextmanager
def make_bench(browser: Browser, office: Office, *, is_begun: bool = True) -> Iterator[Bench]:
    """A visit of today with somebody to ring and notes on getting in; the trimmer is signed in on the phone."""
    day = make_crush_day(is_begun=is_begun)
    _furnish(day)
    office.begin_with()
    context = browser.new_context(viewport=ONE_HAND)
    context.set_default_timeout(LONGEST_MS)
    context.add_cookies([_session_of(day, office)])
    bench = Bench(day, office, context.new_page())
    bench.page.on("console", bench._told)
    bench.page.on("pageerror", lambda fault: bench.complaints.append(str(fault)))
    yield bench
    context.close()
    assert bench.complaints == []


def _furnish(day: CrushDay) -> None:
    farm = day.house.farm
    label = {"active_substance": "Iodophor", "dilution": "1:100", "contact_minutes": Decimal(5), "unit": "ml"}
    make_consumable(day.house.business, "Yard wash", ConsumableKind.DISINFECTANT, **label)
    Contact.objects.create(
        business=day.house.business, farm=farm, name="J. Farmer", part="farmer", phone="+44 (0)7700 900123"
    )
    farm.access_notes = "Second gate after the bridge; mind the dog."
    farm.save()


def _session_of(day: CrushDay, server: Server) -> dict[str, str]:
    client = Client()
    client.force_login(day.house.trimmer)
    key = client.cookies[settings.SESSION_COOKIE_NAME].value
    server.know_session(key)
    return {"name": settings.SESSION_COOKIE_NAME, "value": key, "url": server.address}
