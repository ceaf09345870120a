"""Every page: readable by everybody on a phone, and no wider than the screen there and on a desk.

Checked with axe-core, the open rule set for WCAG; the browser's own console and requests are watched by `site`.
"""

import re
from collections.abc import Iterator

import pytest
from axe_playwright_python.sync_playwright import Axe
from django.urls import get_resolver, resolve

from tests.browser.conftest import DESK, PHONE, Site
from tests.browser.identity_pages import BUTTONS, SECOND_STEP
from tests.browser.pages import clients_pages, owners_pages, strangers_pages
from trimops.accounts.models import User

pytestmark = pytest.mark.xdist_group("browser")
# Papers, feeds, buttons, and what goes on to another page by itself.
NO_PAGES = {
    *("home", "visit_report", "draft_list", "invoice_paper", "calendar_feed", "calendar_revoke", "day_off"),
    *(
        "week_plan_enough",
        "week_plan_prove",
        "week_plan_bring_back",
        "week_stop_places",
        "week_stop_move",
        "week_stop_lock",
    ),
    *("day_sheet", "herd_year"),
    *("visit_report_version", "visit_report_issue", "referral_letter", "referral_issue"),
    *("crush_today", "crush_papers", "crush_writings", "crush_photo", "trim_photo"),
    *("portal_hold", "portal_wish", "portal_take", "portal_let_go"),
    *("portal_invoice_paper", "portal_invoice_xml", "portal_calendar_close"),
    "list_by_link",
    *("invoice_by_link_pdf", "invoice_by_link_xml", "invoice_link_close"),
    *("webhook_try", "webhook_close", "outside_calendar_read", "outside_calendar_remove"),
    *("sending", "sent_paper", "outgoing_now", "outgoing_again", "outgoing_leave"),
    *("offer_hold", "held_take", "held_let_go"),
    *("replan_state", "replan_accept", "replan_drop", "replan_told", "van_back"),
    *("visit_bill", "bill_after_all", "invoice_whole_drop"),
    *("invoice_draft", "plan_week", "week_plan_accept", "week_plan_state", "payer"),
    *("reminders_approve", "reminder_paper", "books_file", "book_csv", "book_xlsx"),
    *("crush_worker", "crush_pack", "crush_manifest"),
    *("portal_data_csv", "portal_data_xlsx", "portal_data_ade", "portal_data_all", "farm_data_all"),
    *("farm_statement", "invoice_set_off", "bank_accept", "bank_aside", "bank_paid_back"),
    *("portal_erase_back", "portal_vet_close", "vet_pass_close", "vet_report", "vet_letter", "vet_photo"),
    *("price_list_drop", "tax_rate_drop", "agreement_end", "money_logo"),
    *("stuck_again", "stuck_leave"),
    *("own_data_all", "person_data_all", "contact_data_all"),
    *SECOND_STEP,
    *BUTTONS,
    "api_try",  # because: it is opened, piece by piece, by test_try_page.py
    *("watch_try", "watch_well", "visit_heard"),
    *("kit_csv", "kit_load", "kit_weather", "kit_order_place", "kit_order_arrived", "kit_order_off"),
    "usersessions_list",  # because: at its address stands our own page, which test_second_step.py opens
    "vet_herd",  # because: its part of the page is the one of herd_figures
}
AXE = Axe()
# All that is looked at on a page, asked in one go.
LOOK = """async (withFrame) => {
  if (!("axe" in window)) return null;
  axe.configure({ rules: [{ id: "color-contrast", selector: withFrame ? "*" : "main, main *" }] });
  const found = await axe.run({resultTypes: ["violations"]});
  const { scrollWidth, clientWidth } = document.documentElement;
  return {
    violations: found.violations.map((broken) => [broken.id, broken.nodes[0].html]),
    wider: scrollWidth - clientWidth,
    words: document.body.innerText,
  };
}"""
# What lies round the page's own part, to the letter but for the token of its forms.
FRAME = """() => [...document.body.children].filter((each) => !each.matches("main, script"))
  .map((each) => each.outerHTML).join("").replace(/value="\\w{64}"/g, "")"""
WIDER = "document.documentElement.scrollWidth - document.documentElement.clientWidth"


def test_every_page_can_be_read_by_everybody_and_fits_the_screen(site: Site) -> None:
    faults = []
    opened = set()
    frames: set[str] = set()
    # Put into each page as it opens: handed over by hand half a megabyte would go through three processes each time.
    site.page.add_init_script(script=AXE.axe_script)
    for path in _walk(site):
        opened.add(resolve(path.partition("?")[0]).url_name)
        site.page.set_viewport_size(DESK)
        faults += _too_wide(site.page.evaluate(WIDER), f"{path} on a desk")
        site.page.set_viewport_size(PHONE)
        frame = site.page.evaluate(FRAME)
        # because: telling colours apart takes most of the time, and half of it the same head and foot again and again
        faults += _faults(site, f"{path} on a phone", with_frame=frame not in frames or not _has_main(site))
        frames.add(frame)

    assert faults == []
    named = {name for name in get_resolver().reverse_dict if isinstance(name, str)}
    forgotten = {name for name in named - opened - NO_PAGES if not name.startswith(("account_", "api_"))}
    assert forgotten == set(), "every address is walked or said to be no page"


def _walk(site: Site) -> Iterator[str]:
    """Open each page in turn as somebody who may."""
    house = site.house
    chairs: list[tuple[User | None, Iterator[str]]] = [
        (None, strangers_pages(site.round)),
        (house.owner, owners_pages(site.round)),
        (house.client, clients_pages(site.round)),
    ]
    for user, paths in chairs:
        if user is not None:
            site.be(user)
        for path in paths:
            assert site.open(path) == 200, path
            if site.page.locator("#app").count():
                # The page at the crush is drawn by its modules once they are there.
                site.page.locator("#app main").wait_for()
            yield path


def _has_main(site: Site) -> bool:
    return site.page.locator("main").count() > 0


def _faults(site: Site, where: str, *, with_frame: bool = True) -> Iterator[str]:
    """`with_frame`: the colours of what lies round the page's own part are looked at too."""
    look = site.page.evaluate(LOOK, with_frame)
    if look is None:
        site.page.evaluate(AXE.axe_script)
        look = site.page.evaluate(LOOK, with_frame)
    for rule, culprit in look["violations"]:
        yield f"{where}: {rule}, {culprit[:120]}"
    yield from _too_wide(look["wider"], where)
    # "None of its windows …" is a sentence and If-None-Match a header; a bare None is a value nobody put into words.
    if site.title() == "" or re.search(r"(?<!If-)None(?! of )", look["words"]):
        yield f"{where}: no title, or a None on the page"


def _too_wide(wider: int, where: str) -> Iterator[str]:
    if wider > 0:
        yield f"{where}: {wider} px wider than the screen"


def test_a_page_that_fails_the_rules_is_found(door: Site) -> None:
    door.page.set_content("<html><body><img src='data:,'><p style='width:900px'>None</p></body></html>")

    found = " ".join(_faults(door, "a bad page"))

    assert all(word in found for word in ("image-alt", "html-has-lang", "wider than the screen", "a None"))


PALE = "<p style='color:#ccc;background:#fff'>Hardly to be read</p>"


def test_pale_words_are_found_on_the_page_always_and_in_its_frame_where_it_is_looked_at(door: Site) -> None:
    in_frame = f"<html lang=en><title>x</title><header>{PALE}</header><main><h1>y</h1></main></html>"
    on_page = f"<html lang=en><title>x</title><main><h1>y</h1>{PALE}</main></html>"
    door.page.set_content(in_frame)
    assert door.page.evaluate(FRAME) == f"<header>{PALE}</header>".replace("'", '"')
    assert "color-contrast" in " ".join(_faults(door, "a pale frame"))
    assert "color-contrast" not in " ".join(_faults(door, "a pale frame", with_frame=False))
    door.page.set_content(on_page)
    assert "color-contrast" in " ".join(_faults(door, "a pale page", with_frame=False))
