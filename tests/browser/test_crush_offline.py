"""The crush page without a network: from cold, after the browser was killed, and when a newer version is there."""

import random
from collections.abc import Iterator

import pytest
from playwright.sync_api import Error, Page, expect

from tests.browser.crush_harness import CrushDay, call, cow_writing, kept, make_crush_day
from tests.browser.crush_phone import Phone, Server
from visits.web.crush_files import file_of

pytestmark = pytest.mark.xdist_group("browser")
STREAM = """async ([visit, writings]) => {
  const { addWriting } = await import("/static/visits/crush/store.js");
  window.kept = (async () => {
    for (const made of writings) await window.noted((await addWriting(made)).uid);
  })();
}"""
FONT = """document.fonts.load('16px "Atkinson Hyperlegible"').then((found) => found.length)"""
LOOK = "trimops/theme.js"


@pytest.fixture
def day(transactional_db) -> CrushDay:
    return make_crush_day()


@pytest.fixture
def server(day, tmp_path) -> Iterator[Server]:
    with Server(tmp_path / "server") as server:
        yield server


@pytest.fixture
def phone(day, server, browser, tmp_path) -> Iterator[Phone]:
    """The visit is open on it, and the page is kept."""
    with Phone(browser, tmp_path / "phone", server) as phone:
        phone.be(day.house.trimmer)
        open_day(phone, day)
        phone.wait_until_kept()
        yield phone
        assert phone.complaints == []


def open_day(phone: Phone, day: CrushDay) -> Page:
    phone.open(day.path)
    expect(phone.page.locator("main")).to_be_visible()
    expect(phone.page.get_by_role("link", name="Low Croft")).to_be_visible()
    return phone.page


def test_from_cold_after_being_killed_with_nobody_answering(day, server, phone):
    server.stop()
    for _ in range(2):
        phone.kill()
        phone.reopen()
        page = open_day(phone, day)
    assert [cow["number"] for cow in kept(page, day)["papers"]["cows"]] == ["101", "201", "202", "203"]
    phone.open("/visits/crush/")
    expect(page.get_by_role("link", name="Low Croft")).to_be_visible()
    assert page.evaluate(FONT) == 1
    with pytest.raises(Error):
        phone.open("/visits/")


def test_what_was_said_to_be_kept_is_there_whenever_the_browser_is_killed(day, server, phone):
    server.stop()
    said: list[str] = []

    def note(uid: str) -> None:
        said.append(uid)

    for cows in (range(1, 200), range(200, 400), range(400, 600)):
        phone.context.expose_function("noted", note)
        phone.page.evaluate(STREAM, [day.visit.pk, [cow_writing(day, cow) for cow in cows]])
        phone.page.wait_for_timeout(random.uniform(50, 600))
        phone.kill()
        phone.reopen()
        there = [each["uid"] for each in kept(open_day(phone, day), day)["writings"]]
        assert set(said) <= set(there)
    assert len(said) > 3


def test_only_the_crush_page_is_answered_from_the_phone(day, server, phone):
    page = phone.page
    answers = []
    page.on("response", lambda answer: answers.append((answer.url, "date" in answer.headers)))
    open_day(phone, day)
    files = [is_from_server for url, is_from_server in answers if "/static/" in url]
    assert len(files) > 40
    assert not any(files)
    assert came_from(page, day.path + "papers.json") == "server"

    phone.open(f"/visits/{day.visit.pk}/")
    for address in ("/static/trimops/trimops.css", "/static/trimops/fonts/atkinson-bold.woff2"):
        assert came_from(page, address) == "server"


def came_from(page: Page, address: str) -> str:
    """What the worker keeps carries no hour of the server."""
    given = "async (address) => (await fetch(address)).headers.has('date') ? 'server' : 'phone'"
    return page.evaluate(given, address)


def serve_later(server: Server, words: str) -> None:
    """The site goes over to a version in which one file is another."""
    server.stop()
    changed = server.later_files / LOOK
    changed.parent.mkdir(exist_ok=True)
    changed.write_text(file_of(LOOK).read_text() + words)
    server.start()


LATER = "\ndocument.documentElement.dataset.version = 'later';\n"
VERSION = "document.documentElement.dataset.version ?? 'first'"
WAITS = "async () => Boolean((await navigator.serviceWorker.getRegistration()).waiting)"


def look_for_newer(page: Page) -> None:
    page.evaluate("async () => { await (await navigator.serviceWorker.getRegistration()).update(); }")


def test_a_newer_version_waits_until_no_page_of_the_older_is_open(day, server, phone):
    page = phone.page
    serve_later(server, LATER)
    look_for_newer(page)
    page.wait_for_function(WAITS)
    for _ in range(2):
        open_day(phone, day)
        assert page.evaluate(VERSION) == "first", "loading again is no way to mix versions"

    page.goto("about:blank")
    page.wait_for_timeout(500)
    open_day(phone, day)
    assert page.evaluate(VERSION) == "later"
    assert len(page.evaluate("caches.keys()")) == 1, "the older version has left the phone"


def test_the_page_is_told_of_a_newer_version_and_goes_over_when_it_says_so(day, server, phone):
    page = phone.page
    page.evaluate(
        "import('/static/visits/crush/worker_news.js').then((it) => it.onNewer(() => { window.isNewer = true; }))"
    )
    serve_later(server, LATER)
    look_for_newer(page)
    page.wait_for_function("() => window.isNewer")
    other = phone.context.new_page()
    other.goto(server.address + day.path)
    call(page, "worker_news.js", "useNewer")
    page.wait_for_timeout(700)
    assert page.evaluate(VERSION) == "first", "the other page of the older version holds it back"
    other.close()

    with page.expect_navigation():
        page.evaluate("import('/static/visits/crush/worker_news.js').then((it) => { it.useNewer(); })")
    expect(page.locator("main")).to_be_visible()
    assert page.evaluate(VERSION) == "later"


def test_a_newer_version_that_cannot_be_fetched_whole_is_not_used(day, server, phone):
    page = phone.page
    phone.sign_out()
    serve_later(server, LATER)
    page.evaluate(
        "navigator.serviceWorker.getRegistration().then((place) => place.update().catch(() => null))"
    )
    page.wait_for_timeout(1500)
    assert not page.evaluate(WAITS)
    server.stop()
    open_day(phone, day)
    assert page.evaluate(VERSION) == "first"
