"""A day at the crush to test with, and the page's own modules called from a test."""

import json
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Any

from playwright.sync_api import Page

from tests.factories import House, make_cow, make_house, make_kit, make_wish
from visits.models import CrushWriting, Visit
from visits.services.ask_visit import ask_visit
from visits.services.plan_visit import plan_visit
from visits.services.start_visit import start_visit

MODULES = "/static/visits/crush/"
# The very module that the page itself has loaded, if it has; a Map comes as an object.
CALL = """async ([module, name, words]) => {
  const answer = await (await import(module))[name](...JSON.parse(words));
  return JSON.stringify(answer ?? null, (key, value) => (value instanceof Map ? Object.fromEntries(value) : value));
}"""


@dataclass(frozen=True)
class CrushDay:
    house: House
    visit: Visit

    @property
    def path(self) -> str:
        return f"/visits/{self.visit.pk}/crush/"


def make_crush_day(cows: int = 3, *, is_begun: bool = True) -> CrushDay:
    """A visit of today, under way unless said otherwise, to a farm with cows 201, 202 …"""
    house = make_house()
    make_kit(house.business)
    for number in range(201, 201 + cows):
        make_cow(house.farm, str(number))
    return CrushDay(house, visit_of_today(house, is_begun=is_begun))


def visit_of_today(house: House, *, is_begun: bool = True) -> Visit:
    now = datetime.now(UTC).replace(microsecond=0)
    today = now.date()
    wish = make_wish(due_from=today, due_until=today + timedelta(days=5), head_count=3)
    visit = ask_visit(farm=house.farm, wish=wish, at=now, by=house.office)
    visit = plan_visit(visit=visit, van=house.van, start=now, at=now, by=house.office)
    return start_visit(visit=visit, checked=True, at=now, by=house.trimmer) if is_begun else visit


def call(page: Page, module: str, name: str, *given: object) -> Any:
    """What `name(...given)` of one of the crush page's modules comes to."""
    return json.loads(page.evaluate(CALL, [MODULES + module, name, json.dumps(given)]))


def cow_content(
    cow: int | None = None, *, new: dict[str, object] | None = None, note: str = ""
) -> dict[str, object]:
    """What a writing of a cow with nothing done carries, complete as the page writes it."""
    entry = {
        "mobility_scale": "",
        "mobility_score": None,
        "belly_band_minutes": None,
        "crush_seconds": 240,
        "note": note,
        "for_vet": "",
        "feet": [no_cut("LH"), no_cut("RH")],
    }
    return {"cow": {"id": cow} if new is None else {"new": new}, "told_vet": "", "entry": entry}


def no_cut(foot: str) -> dict[str, object]:
    signs = (
        *("has_pain", "has_swelling", "swelling_above_dewclaw", "has_bad_smell", "drew_blood"),
        *("sensitive_tissue", "deep_infection", "no_better_at_recheck"),
    )
    measures = {
        "wall_mm": None,
        "wall_measured_from": "",
        "toe_angle": None,
        "look_again_days": None,
        "for_vet": "",
    }
    done = [{"kind": "no_cut", "claw": "", "block_kind": ""}]
    return {"foot": foot, **measures, **dict.fromkeys(signs, False), "findings": [], "actions": done}


def cow_writing(day: CrushDay, cow: int, *, note: str = "", **changes: object) -> dict[str, object]:
    """What `addWriting` is given for a cow."""
    record = f"0190aaaa-0000-7000-8000-{cow:012d}"
    made = {"visit": day.visit.pk, "kind": "cow", "record": record, "after": None, "is_gone": False}
    return {**made, "content": cow_content(cow, note=note), "cowKey": f"c{cow}", **changes}


# Elsewhere than on the crush page the test starts the sender itself.
START = """async (visit) => {
  // A second sender would wipe what the first has heard, and the test would wait for it in vain.
  if (window.sender) throw new Error("this page has a sender");
  const { startSender } = await import("/static/visits/crush/sender.js");
  window.said = [];
  window.told = 0;
  window.sender = startSender(visit, (status) => window.said.push(status), () => { window.told += 1; });
}"""
SAYS = "([name, value]) => window.said.at(-1)?.[name] === value && !window.said.at(-1).is_sending"


def fetch_and_sit(page: Page, day: CrushDay) -> None:
    """The papers on the phone, and a page that works for whoever is signed in."""
    assert call(page, "papers.js", "fetchPapers", day.visit.pk)["trouble"] == ""
    kept(page, day)


def add(page: Page, day: CrushDay, cow: int, **changes: object) -> dict:
    return call(page, "store.js", "addWriting", cow_writing(day, cow, **changes))


def start(page: Page, day: CrushDay) -> None:
    page.evaluate(START, day.visit.pk)


def send_until(page: Page, name: str, value: object) -> dict:
    """Press "send" and wait until the line says so."""
    page.evaluate("window.sender.sendNow()")
    page.wait_for_function(SAYS, arg=[name, value])
    return page.evaluate("window.said.at(-1)")


def kept(page: Page, day: CrushDay) -> dict:
    return call(page, "store.js", "loadVisit", day.visit.pk)


def arrived(day: CrushDay) -> list[str]:
    """The writings that the server has, in the order in which they came."""
    rows = CrushWriting.objects.within(day.house.scope).filter(visit=day.visit)
    return [str(uid) for uid in rows.order_by("pk").values_list("uid", flat=True)]
