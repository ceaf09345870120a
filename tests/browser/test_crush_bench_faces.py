"""Each state of the bench's screens: readable by everybody, hit by a glove, no wider than the phone.

Checked with axe-core; in the outdoor theme with its 7:1 rule as well. Pictures go to demo-output/crush, which git
ignores.
"""

from collections.abc import Iterator
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from django.conf import settings
from playwright.sync_api import Browser, ViewportSize, expect

from tests.browser.crush_bench_site import Bench, make_bench
from tests.browser.crush_harness import call
from tests.browser.queue_face import Office

pytestmark = pytest.mark.xdist_group("browser")
AXE = Axe()
RUN = """options => axe.run({resultTypes: ['violations'], ...options})
  .then(found => found.violations.map(broken => [broken.id, broken.nodes[0].html.slice(0, 160)]))"""
SEVEN_TO_ONE = {"rules": {"color-contrast-enhanced": {"enabled": True}}}
# A tick is hit by its whole line.
SMALL = """() => [...document.querySelectorAll("main :is(a, button, summary, .tick-row, input:not([type=checkbox]))")]
  .map(one => [(one.textContent.trim() || one.id).slice(0, 30), one.getBoundingClientRect()])
  .filter(([, box]) => box.width > 0 && (box.width < 56 || box.height < 56))
  .map(([words, box]) => `${words}: ${Math.round(box.width)} x ${Math.round(box.height)}`)"""
WIDER = "document.documentElement.scrollWidth - document.documentElement.clientWidth"
PHONE: ViewportSize = {"width": 360, "height": 640}
TABLET: ViewportSize = {"width": 820, "height": 1180}
VIEWS = ((PHONE, "light"), (PHONE, "outdoor"), (TABLET, "light"))


@pytest.fixture(scope="module")
def office(django_db_setup, django_db_blocker, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Office]:
    with django_db_blocker.unblock():
        office = Office(tmp_path_factory.mktemp("office"))
    with office:
        yield office


@pytest.fixture
def bench(transactional_db, browser: Browser, office: Office) -> Iterator[Bench]:
    with make_bench(browser, office) as bench:
        yield bench


def looked_at(bench: Bench, state: str) -> None:
    """Look at what stands there now in every view; at the end it is as it was."""
    faults = []
    for size, theme in VIEWS:
        bench.page.set_viewport_size(size)
        bench.page.evaluate("theme => { document.documentElement.dataset.theme = theme; }", theme)
        bench.page.evaluate("window.scrollTo(0, 0)")
        bench.page.screenshot(path=_picture(f"{state}-{size['width']}-{theme}"), full_page=True)
        faults += [f"{state}, {size['width']} px, {theme}: {fault}" for fault in _faults(bench, theme)]
    bench.page.set_viewport_size(PHONE)
    bench.page.evaluate("document.documentElement.dataset.theme = 'light'")
    assert faults == []


def _faults(bench: Bench, theme: str) -> Iterator[object]:
    if not bench.page.evaluate("'axe' in window"):
        bench.page.evaluate(AXE.axe_script)
    yield from bench.page.evaluate(RUN, SEVEN_TO_ONE if theme == "outdoor" else {})
    yield from bench.page.evaluate(SMALL)
    if wider := bench.page.evaluate(WIDER):
        yield f"{wider} px wider than the screen"
    if any(word in bench.page.inner_text("body") for word in ("undefined", "NaN", "[object", "null")):
        yield "a word of the machine on the page"


def _picture(name: str) -> Path:
    folder = Path(settings.BASE_DIR) / "demo-output" / "crush"
    folder.mkdir(parents=True, exist_ok=True)
    return folder / f"bench-{name}.png"


def test_the_start_check_and_the_farm(transactional_db, browser: Browser, office: Office) -> None:
    with make_bench(browser, office, is_begun=False) as bench:
        page = bench.open("begin")
        looked_at(bench, "begin")
        page.locator("#before-2").check()
        page.get_by_role("button", name="All checked: begin").press("Enter")
        looked_at(bench, "begin-missing")
        bench.open("farm")
        expect(page.get_by_text("Working alone")).to_be_visible()
        looked_at(bench, "farm")


def test_the_wash_down(bench: Bench) -> None:
    page = bench.open("wash")
    looked_at(bench, "wash")
    page.get_by_role("button", name="Keep this wash-down").click()
    looked_at(bench, "wash-to-mend")
    page.get_by_text("What was tried in a laboratory").click()
    page.get_by_role("button", name="Fill in Peroxygen").click()
    page.get_by_label("Minutes it stayed on").fill("10")
    page.get_by_role("button", name="Keep this wash-down").click()
    page.get_by_role("button", name="Change the wash-down").click()
    looked_at(bench, "wash-change")


def test_the_kit(bench: Bench) -> None:
    page = bench.open("kit")
    looked_at(bench, "kit-nothing")
    bench.put_down_block()
    expect(page.get_by_role("group", name="Wooden block").get_by_role("textbox")).to_have_value("1")
    page.get_by_role("group", name="Wrap").get_by_role("textbox").fill("-")
    page.get_by_role("group", name="Wrap").get_by_role("textbox").blur()
    looked_at(bench, "kit")


def test_the_sign_off(bench: Bench) -> None:
    page = bench.open("sign-off")
    looked_at(bench, "sign-off-no-cow")
    bench.put_down_block(drew_blood=True)
    expect(page.get_by_text("For the vet: 1 cow")).to_be_visible()
    page.get_by_label("What was done").fill("One, and she kicked.")
    page.get_by_role("button", name="Finish the visit").click()
    looked_at(bench, "sign-off-to-mend")
    page.get_by_role("button", name="J. Farmer").click()
    page.get_by_role("button", name="Finish the visit").click()
    expect(page.get_by_text("All of it is sent.")).to_be_visible()
    looked_at(bench, "sign-off-done")
    page.get_by_role("button", name="Change the sign-off").click()
    looked_at(bench, "sign-off-change")


def test_this_phone(bench: Bench) -> None:
    page = bench.open("phone")
    expect(page.get_by_role("heading", level=1)).to_have_text("This phone: nothing waits to be sent")
    page.get_by_role("button", name="Clear this visit from the phone").click()
    looked_at(bench, "phone-clear")
    page.get_by_role("button", name="Leave it").click()
    page.context.set_offline(True)
    bench.put_down_block()
    page.get_by_role("button", name="Clear this visit from the phone").click()
    looked_at(bench, "phone-waiting")


def test_the_days(bench: Bench) -> None:
    page = bench.go_to("/visits/crush/")
    expect(page.get_by_role("button", name="Fetch its papers").first).to_be_visible()
    looked_at(bench, "days")
    call(page, "papers.js", "fetchPapers", bench.day.visit.pk)
    page.route("**/today.json", lambda route: route.fulfill(status=503, body="{}"))
    page.reload()
    expect(page.get_by_text("The office does not answer just now.")).to_be_visible()
    looked_at(bench, "days-no-answer")
    page.unroute("**/today.json")
    page.route("**/today.json", lambda route: route.fulfill(json={"today": "2026-11-25", "visits": []}))
    call(page, "store.js", "forgetDay", bench.day.visit.pk)
    page.reload()
    expect(page.get_by_text("Nothing is planned for you")).to_be_visible()
    looked_at(bench, "days-nothing")
    bench.complaints.clear()  # the browser itself complains of an office that does not answer
