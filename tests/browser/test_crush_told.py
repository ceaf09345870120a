"""The cows of the day, and what is told of them: refused ones mended, cows of two phones chosen between."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, expect

from tests.browser.crush_harness import call, cow_content
from tests.browser.queue_day import make_queue_day
from tests.browser.queue_face import Face, Office, phone_on

pytestmark = pytest.mark.xdist_group("browser")


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


def test_a_cow_of_the_day_is_opened_and_changed(face: Face) -> None:
    face.put_down("212")
    face.put_down("213")
    face.open("cows")
    face.is_titled("2 cows noted today")
    expect(face.page.locator(".d-cow b")).to_have_text(["213", "212"])
    expect(face.page.locator(".d-cow").first).to_contain_text("Functional trim, 4 feet")
    face.is_fit_for_all()

    face.page.locator(".d-cow", has_text="212").tap()
    face.page.locator(".score", has_text="1").tap()
    face.page.locator("[data-save='main']").tap()
    face.says("Cow 212 is")

    face.open("cows")
    expect(face.page.locator(".d-cow", has_text="212")).to_be_visible()
    expect(face.page.locator(".d-cow")).to_have_count(2)


def test_a_cow_is_taken_back_by_a_second_tap_elsewhere_and_can_come_back(face: Face) -> None:
    face.put_down("212")
    face.open("cows")

    face.button("Take back cow 212").tap()
    expect(face.button("Keep her")).to_be_focused()
    face.is_fit_for_all()
    face.button("Keep her").tap()
    expect(face.button("Take back cow 212")).to_be_focused()
    face.is_titled("1 cow noted today")
    face.button("Take back cow 212").tap()
    face.button("Yes, take her back").tap()
    face.is_titled("No cow is noted yet today")
    assert face.office_has() == []
    face.is_fit_for_all()
    face.button("Put cow 212 back").tap()

    face.is_titled("1 cow noted today")
    assert face.office_has() == ["212"]


def test_many_cows_are_narrowed_by_number(face: Face) -> None:
    for number in ("211", "212", "213", "214", "215", "31"):
        _write(face, number)
    for number in ("7001", "7002", "7003"):
        uid = face.page.evaluate("crypto.randomUUID()")
        _write(face, number, {"new": {"uid": uid, "number": number, "is_another": False}})
    face.open("cows")
    face.is_titled("9 cows noted today")

    face.page.get_by_label("Find her by number").fill("70")

    expect(face.page.locator(".d-cow")).to_have_count(3)
    face.is_fit_for_all()


def test_a_refused_cow_says_what_is_wrong_and_is_mended(face: Face) -> None:
    _write_with_zone_13(face, "212")
    face.put_down("213")
    face.open()
    face.page.locator(".q-news").tap()
    face.is_titled("1 to mend")
    expect(face.page.locator(".t-row")).to_contain_text("Cow 212")
    expect(face.page.locator(".t-row li")).to_contain_text("Left hind, sole ulcer, zone: must be")
    face.is_fit_for_all()
    assert face.office_has() == ["213"], "a bad one holds up nobody"

    face.page.locator(".t-mend").tap()
    face.page.locator("[data-foot='LH']").tap()
    face.page.locator(".done-list button").first.tap()
    face.page.locator("[data-save='main']").tap()

    face.says("Cow 212 is")
    assert face.office_has() == ["212", "213"]
    face.open("told")
    face.is_titled("Nothing to mend, no cow noted twice")


def test_a_refused_cow_is_thrown_away_after_one_more_question(face: Face) -> None:
    _write_with_zone_13(face, "212")
    face.open("told")

    face.page.locator(".t-row .act-stop").tap()
    expect(face.button("Keep it")).to_be_focused()
    face.is_fit_for_all()
    face.button("Keep it").tap()
    face.page.locator(".t-row .act-stop").tap()
    face.button("Yes, throw it away").tap()

    face.is_titled("Nothing to mend, no cow noted twice")
    face.open()
    expect(face.page.locator(".q-tile", has_text="212")).to_be_visible()


def test_a_cow_of_two_phones_is_told_and_the_other_can_be_kept(face: Face, other: Face) -> None:
    _both_put_down(face, other, "214")
    other.page.locator(".q-news").tap()
    other.is_titled("1 cow noted on two phones")
    shows, said = other.page.locator(".t-row dd").all()
    expect(shows).to_contain_text("this phone")
    expect(said).to_contain_text("Looked at, 2 feet")
    other.is_fit_for_all()

    other.page.get_by_role("button", name="Keep the other instead").tap()

    other.is_titled("Nothing to mend, no cow noted twice")
    other.open("cows")
    expect(other.page.locator(".d-cow")).to_contain_text("Looked at, 2 feet")
    assert other.office_has_feet() == 2, "the office has what the first phone said"


def test_a_cow_of_two_phones_may_stay_as_she_shows(face: Face, other: Face) -> None:
    _both_put_down(face, other, "214")
    other.open("told")

    other.page.get_by_role("button", name="Leave as she shows, cow 214").tap()

    other.says("Cow 214 stays as she shows.")
    other.page.reload()
    other.is_titled("Nothing to mend, no cow noted twice")
    other.open()
    expect(other.page.locator(".q-news")).to_have_count(0)


def _write(face: Face, number: str, cow: dict[str, object] | None = None, **entry: object) -> None:
    """Put a cow down through the store, past the page and its own rules."""
    known = face.day.cows.get(number)
    content = cow_content(known.pk if known else None)
    content |= {"cow": cow} if cow else {}
    content["entry"] |= entry
    record = face.page.evaluate("crypto.randomUUID()")
    key = f"c{known.pk}" if known else f"n{cow['new']['uid']}"
    made = {"visit": face.day.visit.pk, "kind": "cow", "record": record, "content": content, "cowKey": key}
    call(face.page, "store.js", "addWriting", made)


def _write_with_zone_13(face: Face, number: str) -> None:
    foot = cow_content(1)["entry"]["feet"][0]
    ulcer = {"lesion": "SU", "claw": "lateral", "zone": 13, "zone_map": "ILC", "severity": 2, "dd_stage": ""}
    _write(face, number, feet=[{**foot, "findings": [ulcer]}])
    expect(face.page.locator(".line-sent")).to_contain_text("1 to mend")


def _both_put_down(face: Face, other: Face, number: str) -> None:
    """Neither phone knows of the other's cow; `other` is the later one, and is told."""
    other.context.set_offline(True)
    _write(face, number)
    face.all_is_sent()
    other.page.locator(".q-tile", has_text=number).tap()
    other.keep_her(number)
    other.context.set_offline(False)
    other.all_is_sent()
    expect(other.page.locator(".q-news")).to_be_visible()
