"""States of the line at the top: no signal, signed out, refused, two phones, a newer version."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import TYPE_CHECKING

from playwright.sync_api import Route, expect

from tests.browser import crush_plans as plans
from tests.browser.crush_other_phone import put_down_elsewhere

if TYPE_CHECKING:
    from tests.browser.crush_states import Walk

FAULT = {"field": "content.entry.feet[0].findings[0].zone", "reason": "This place is not on the map."}
NEWER = """() => {
  const place = { waiting: { postMessage() {} }, addEventListener() {}, update: async () => {} };
  navigator.serviceWorker.register = async () => place;
}"""


def line_states(walk: Walk) -> Iterator[str]:
    yield from _two_phones(walk)
    yield from _refused(walk)
    yield from _no_signal(walk)
    yield from _newer(walk)
    yield from _days(walk)


def _two_phones(walk: Walk) -> Iterator[str]:
    """This phone put her down without having heard of the other one."""
    walk.phone.context.set_offline(True)
    walk.hand.put_down(plans.bare_ulcer("210"))
    put_down_elsewhere(walk, "210")
    walk.phone.context.set_offline(False)
    walk.phone.open(walk.yard.path)
    expect(walk.page.locator(".q-news")).to_contain_text("two phones")
    yield "queue with a cow of two phones"
    walk.go("told")
    yield "told two phones"


def _refused(walk: Walk) -> Iterator[str]:
    """The office would take all that this page lets through; so its answer is put in the place of the real one."""
    walk.go("")
    walk.page.route("**/crush/writings/", _refuse_all)
    walk.hand.put_down(plans.dermatitis("211"))
    expect(walk.page.locator(".line-sent")).to_contain_text("to mend")
    yield "queue with one refused"
    walk.go("told")
    yield "told refused"
    walk.hand.tap(walk.page.get_by_role("button", name="Throw it away").first)
    yield "told asked to throw away"
    walk.page.unroute("**/crush/writings/")


def _refuse_all(route: Route) -> None:
    given = json.loads(route.request.post_data or "{}")
    answers = [
        {"uid": one["uid"], "outcome": "refused", "faults": [FAULT], "shows": None, "beside": []}
        for one in given["writings"]
    ]
    visit = {"state": "under_way", "started_at": None, "finished_at": None}
    body = {"now": given["sent_at"], "cursor": given["seen"], "more": False, "visit": visit}
    route.fulfill(json={**body, "answers": answers, "others": []})


def _no_signal(walk: Walk) -> Iterator[str]:
    walk.go("")
    walk.server.stop()
    walk.phone.open()
    walk.hand.put_down(plans.no_cut("212"))
    expect(walk.page.locator(".line-sent")).to_contain_text("No signal")
    yield "queue without signal"
    walk.go("phone")
    expect(walk.page.get_by_role("heading", name="Visits on this phone")).to_be_visible()
    yield "phone with things waiting"
    walk.phone.open("/visits/999999/crush/")
    expect(walk.page.locator("h1", has_text="not on the phone")).to_be_visible()
    yield "opening without signal"
    walk.phone.open("/visits/crush/")
    expect(walk.page.locator("h1")).to_be_visible()
    yield "days without signal"
    walk.server.start()
    walk.phone.sign_out()
    walk.phone.open(walk.yard.path)
    expect(walk.page.locator(".line-sent")).to_contain_text("Sign in")
    yield "queue signed out"
    walk.phone.be(walk.yard.house.trimmer)


def _newer(walk: Walk) -> Iterator[str]:
    walk.page.add_init_script(f"if (navigator.serviceWorker) ({NEWER})()")
    walk.phone.open(f"{walk.yard.path}#/phone")
    walk.phone.open()
    expect(walk.page.get_by_role("button", name="newer version")).to_be_visible()
    yield "phone with a newer version"
    walk.go("")
    yield "queue with a newer version"


def _days(walk: Walk) -> Iterator[str]:
    walk.phone.open("/visits/crush/")
    expect(walk.page.locator(".day-visit").first).to_be_visible()
    yield "days"
    walk.phone.open(f"/visits/{walk.small.pk}/crush/")
    walk.hand.begin()
    yield "queue empty"
    walk.hand.put_down(plans.sound("11"))
    yield "queue all done"
