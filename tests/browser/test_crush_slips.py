"""Slips of a wet glove and of bad timing: none of them loses, doubles or mistakes a cow or her picture."""

from collections.abc import Iterator
from typing import Any

import pytest
from django.conf import settings
from playwright.sync_api import Browser, Page, Route, expect

from farms.domain.cow_status import CowStatus
from tests.browser.crush_photos import camera
from tests.browser.queue_day import make_queue_day
from tests.browser.queue_face import AXE, BROKEN, WIDER, Face, Office, phone_on
from visits.models import TrimPhoto

pytestmark = pytest.mark.xdist_group("browser")
KEPT = """async (visit) => {
  const { loadVisit } = await import("/static/visits/crush/store.js");
  const { writings, drafts, photos } = await loadVisit(visit);
  return { writings, photos, drafts: Object.fromEntries(drafts) };
}"""
FETCH = """async (visit) => (await import("/static/visits/crush/papers.js")).fetchPapers(visit)"""
REFUSED = """async (visit) => {
  const { loadVisit } = await import("/static/visits/crush/store.js");
  const { markRefused } = await import("/static/visits/crush/store_answers.js");
  const { writings } = await loadVisit(visit);
  await markRefused("writings", writings[0].uid, [{ field: "", reason: "This visit was called off: snow." }]);
}"""
TWO_AT_ONCE = "one => { one.click(); one.click(); }"
PHOTOS = "**/crush/photos/**"
CLICKS = "clicks = []; addEventListener('pointerdown', (event) => clicks.push(event.timeStamp), true)"
MAIN = "[data-save='main']"
DERMATITIS = ("[data-foot='LH']", "[data-place='skin 10']", "[data-lesion='DD']")


@pytest.fixture(scope="module")
def office(django_db_setup, django_db_blocker, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Office]:
    with django_db_blocker.unblock():
        office = Office(tmp_path_factory.mktemp("office"))
    with office:
        yield office


@pytest.fixture
def face(transactional_db, browser: Browser, office: Office) -> Iterator[Face]:
    day = make_queue_day()
    office.begin_with()
    with phone_on(browser, office, day) as opened:
        yield opened


@pytest.fixture
def other(browser: Browser, face: Face) -> Iterator[Face]:
    """A second phone on the same visit."""
    with phone_on(browser, face.server, face.day) as opened:
        expect(opened.page.locator(".q-next")).to_be_visible()
        yield opened


def test_two_taps_at_once_keep_her_once(face: Face) -> None:
    _bring(face, "212")
    face.page.locator(MAIN).evaluate(TWO_AT_ONCE)
    face.says("Cow 212 is noted.")
    assert len(_kept(face)["writings"]) == 1


def test_a_bounce_on_done_opens_no_other_cow(face: Face) -> None:
    face.page.evaluate(CLICKS)
    for number in ("31", "A12", "215", "214", "213"):
        _bring(face, number)
        face.page.locator(MAIN).dblclick()
        face.page.wait_for_timeout(300)
        if face.page.evaluate("clicks.at(-1) - clicks.at(-2)") < 100:
            break  # a busy machine may be slower than a glove bounces: then it was two taps
    expect(face.page.get_by_role("heading", level=1)).to_contain_text("of 6 cows done")
    assert face.page.evaluate("location.hash") == "#/"


def test_a_bounce_on_done_does_not_answer_the_question(face: Face) -> None:
    _bring(face, "212")
    for place in DERMATITIS:
        face.page.locator(place).first.tap()
    face.page.locator(MAIN).dblclick()
    expect(face.page.locator(".asked-box")).to_contain_text("Sure?")
    face.page.wait_for_timeout(300)
    assert _kept(face)["writings"] == []


def test_what_was_put_down_is_not_let_go_by_one_tap(face: Face) -> None:
    _bring(face, "212")
    face.page.locator(".score", has_text="1").tap()
    face.button("Not done: let her go").tap()
    expect(face.page.locator(".asked-box")).to_be_focused()
    _is_fit_for_all(face)
    assert len(_kept(face)["drafts"]) == 1
    face.button("Keep her here").tap()
    expect(face.page.locator(".asked-box")).to_have_count(0)
    face.button("Not done: let her go").tap()
    face.button("Let her go").tap()
    face.is_titled("0 of 6 cows done")
    assert _kept(face)["drafts"] == {}


def test_a_cow_opened_by_mistake_goes_by_one_tap_and_does_not_come_back_by_the_way_back(face: Face) -> None:
    _bring(face, "212")
    face.button("Not done: let her go").tap()
    face.is_titled("0 of 6 cows done")
    face.page.go_back()
    face.page.wait_for_timeout(300)
    assert _kept(face)["drafts"] == {}


def test_a_picture_waits_for_its_cow_and_goes_with_her(face: Face) -> None:
    _bring(face, "212")
    _take_picture(face)
    face.page.wait_for_timeout(1500)
    assert [one["state"] for one in _kept(face)["photos"]] == ["waiting"], "not sent without her"
    face.button("Not done: let her go").tap()
    expect(face.page.locator(".asked-box")).to_contain_text("1 picture")
    face.button("Let her go").tap()
    face.is_titled("0 of 6 cows done")
    assert _kept(face)["photos"] == []


def test_a_picture_is_sent_once_its_cow_is_kept(face: Face) -> None:
    _bring(face, "212")
    _take_picture(face)
    face.keep_her("212")
    face.all_is_sent()
    assert [one["state"] for one in _kept(face)["photos"]] == ["sent"]


def test_enter_takes_no_cow_that_may_be_another(face: Face) -> None:
    for number in ("21", "217"):
        face.open()
        face.open("number")
        face.page.keyboard.type(number)
        expect(face.page.get_by_label("Her number")).to_have_value(number)
        face.page.keyboard.press("Enter")
        face.page.wait_for_timeout(200)
        face.is_titled("Which cow is in the crush?")


def test_a_number_is_no_longer_than_the_office_takes(face: Face) -> None:
    face.open("number")
    face.page.keyboard.type("1" * 25)
    expect(face.page.get_by_label("Her number")).to_have_value("1" * 20)


def test_a_cow_added_here_is_the_same_under_the_name_that_the_office_gave_her(face: Face) -> None:
    face.open("number")
    face.type("215")
    face.button("Another cow that wears 215: add her").tap()
    face.page.locator(".score", has_text="1").tap()
    face.keep_her("215")
    face.all_is_sent()
    face.page.evaluate(FETCH, face.day.visit.pk)
    (written,) = _kept(face)["writings"]
    face.open("number")
    face.type("215")
    expect(face.page.locator(".k-hit")).to_have_count(2)
    face.open()
    face.open(f"cow/c{written['cow_id']}")
    face.is_titled("Mend cow 215")
    expect(face.page.locator(".score", has_text="1")).to_have_attribute("aria-pressed", "true")


def test_it_is_told_that_the_other_phone_changed_her_meanwhile(face: Face, other: Face) -> None:
    face.put_down("212")
    face.all_is_sent()
    _send_now(other)
    for phone in (face, other):
        phone.open("cows")
        phone.page.locator(".d-cow", has_text="212").tap()
        phone.is_titled("Mend cow 212")
    face.page.locator(".score", has_text="1").tap()
    other.page.locator(".score", has_text="0").tap()
    other.keep_her("212")
    other.all_is_sent()
    _send_now(face)
    expect(face.page.locator(".meanwhile")).to_contain_text("changed her")
    _is_fit_for_all(face)


def test_a_cow_only_looked_at_shows_what_the_other_phone_put_down_meanwhile(face: Face, other: Face) -> None:
    face.put_down("212")
    face.all_is_sent()
    _send_now(other)
    for phone in (face, other):
        phone.open("cows")
        phone.page.locator(".d-cow", has_text="212").tap()
        phone.is_titled("Mend cow 212")
    other.page.locator(".score", has_text="0").tap()
    other.keep_her("212")
    other.all_is_sent()
    _send_now(face)
    face.page.wait_for_timeout(300)
    expect(face.page.locator(".score", has_text="0")).to_have_attribute("aria-pressed", "true")


def test_a_cow_looked_at_when_the_page_was_closed_is_not_begun(face: Face) -> None:
    face.put_down("212")
    face.open("cows")
    face.page.locator(".d-cow", has_text="212").tap()
    face.is_titled("Mend cow 212")
    assert len(_kept(face)["drafts"]) == 1
    face.page.goto("about:blank")
    face.open()
    face.is_titled("1 of 6 cows done")
    assert _kept(face)["drafts"] == {}


def test_the_sheet_keeps_the_focus_and_escape_closes_it(face: Face) -> None:
    _bring(face, "212")
    for place in DERMATITIS[:2]:
        face.page.locator(place).first.tap()
    face.page.locator("[data-lesion='DD']").focus()
    face.page.keyboard.press("Enter")
    expect(face.page.locator(".sheet-found")).to_be_visible()
    assert face.page.evaluate("Boolean(document.activeElement.closest('.sheet'))")
    face.page.keyboard.press("Escape")
    expect(face.page.locator(".sheet")).to_have_count(0)
    expect(face.page.locator("[data-place='skin 10']")).to_be_focused()


def test_a_measure_is_kept_with_every_digit(face: Face) -> None:
    _bring(face, "212")
    face.page.locator("[data-foot='LH']").tap()
    face.page.locator("summary", has_text="Measures").tap()
    field = face.page.get_by_label("Front wall")
    field.press_sequentially("78", delay=5)
    face.page.wait_for_timeout(400)
    expect(field).to_have_value("78")
    (draft,) = _kept(face)["drafts"].values()
    assert draft["content"]["entry"]["feet"][0]["wall_mm"] == 78


def test_a_second_tab_sees_what_the_first_one_put_down(face: Face) -> None:
    _bring(face, "212")
    second = face.context.new_page()
    second.goto(face.page.url)
    expect(second.get_by_role("heading", level=1)).to_have_text("Cow 212")
    face.page.locator(".score", has_text="1").tap()
    expect(second.locator(".score", has_text="1")).to_have_attribute("aria-pressed", "true")
    second.locator(".rest button", has_text="Hind feet").tap()
    expect(face.page.locator(".rest button", has_text="Hind feet")).to_have_attribute("aria-pressed", "true")
    second.close()
    face.keep_her("212")
    (written,) = _kept(face)["writings"]
    entry = written["content"]["entry"]
    assert (entry["mobility_score"], len(entry["feet"])) == (1, 2)


def test_what_was_refused_because_of_the_visit_goes_again_as_it_is(face: Face) -> None:
    face.put_down("212")
    face.all_is_sent()
    face.page.evaluate(REFUSED, face.day.visit.pk)
    face.open("told")
    face.is_titled("1 to mend")
    _is_fit_for_all(face)
    face.button("Send it again as it is").tap()
    assert face.office_has() == ["212"]
    face.is_titled("Nothing to mend, no cow noted twice")


def test_a_cow_sold_at_the_desk_while_she_stands_in_the_crush_is_still_kept(face: Face) -> None:
    _bring(face, "215")
    sold = face.day.cows["215"]
    sold.status = CowStatus.SOLD.value
    sold.save()
    face.server.begin_with()
    face.page.evaluate(FETCH, face.day.visit.pk)
    face.page.reload()
    face.is_titled("Cow 215")
    face.keep_her("215")
    assert face.office_has() == ["215"]


def test_nothing_goes_under_the_name_of_somebody_who_signs_in_while_it_is_sent(face: Face) -> None:
    """In another tab, say; the pictures of a day take minutes on a thin line."""
    _bring(face, "212")
    _take_picture(face)
    _take_picture(face, 2)
    newcomer = face.session_of(face.day.house.owner)

    def pass_on(route: Route) -> None:
        answer = route.fetch()
        names = {settings.SESSION_COOKIE_NAME: newcomer, settings.CSRF_COOKIE_NAME: "b" * 32}
        face.context.add_cookies(
            [{"name": name, "value": value, "url": face.server.address} for name, value in names.items()]
        )
        route.fulfill(response=answer)

    face.page.route(PHOTOS, pass_on, times=1)
    face.keep_her("212")
    expect(face.page.locator(".line-sent")).to_contain_text("Somebody else is signed in")

    face.server.bring_back()
    house = face.day.house
    assert [photo.by for photo in TrimPhoto.objects.within(house.scope)] == [house.trimmer]
    face.complaints.clear()  # the browser's own word of the refused token


def _bring(face: Face, number: str) -> None:
    face.open("number")
    face.type(number)
    face.page.locator(".k-hit").first.tap()
    face.is_titled(f"Cow {number}")


def _take_picture(face: Face, nth: int = 1) -> None:
    if nth == 1:
        face.page.locator("summary", has_text="Note, picture, vet").tap()
    picture = {"name": "taken.jpg", "mimeType": "image/jpeg", "buffer": camera(7)()}
    face.page.locator(".photo-take input").set_input_files(picture)
    expect(face.page.locator(".photos img")).to_have_count(nth)


def _kept(face: Face) -> dict[str, Any]:
    return face.page.evaluate(KEPT, face.day.visit.pk)


def _send_now(face: Face) -> None:
    """The signal comes back: what the other phone wrote is here when this ends."""
    seen: Page = face.page
    with seen.expect_response(lambda answer: answer.url.endswith("/crush/writings/")):
        seen.evaluate("dispatchEvent(new Event('online'))")


def _is_fit_for_all(face: Face) -> None:
    """Readable by everybody, no wider than the phone."""
    face.page.evaluate(AXE.axe_script)
    assert face.page.evaluate(BROKEN) == []
    assert face.page.evaluate(WIDER) == 0
