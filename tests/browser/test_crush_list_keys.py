"""The list of the day, the keypad and the cows of the day without a touch: a hardware keyboard does it all."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Locator, expect

from tests.browser.queue_day import make_queue_day
from tests.browser.queue_face import Face, Office, phone_on

pytestmark = pytest.mark.xdist_group("browser")
IS_FOCUSED = "one => one === document.activeElement"
OUTLINE = "one => getComputedStyle(one).outlineStyle"
MOST_TABS = 40


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


def test_a_cow_is_found_typed_and_put_down_by_keyboard(face: Face) -> None:
    _tab_to(face, face.link("Another cow"))
    face.page.keyboard.press("Enter")
    expect(face.page.get_by_label("Her number")).to_be_focused()

    face.page.keyboard.type("a1")
    expect(face.page.get_by_label("Her number")).to_have_value("A1")
    face.page.keyboard.press("Enter")

    expect(face.page.get_by_role("heading", name="Cow A12")).to_be_visible()
    _tab_to(face, face.page.locator("[data-save='main']"))
    face.page.keyboard.press("Enter")
    face.says("Cow A12 is")
    face.is_titled("1 of 6 cows done")


def test_digits_count_wherever_the_focus_stands_and_enter_takes_the_exact_one(face: Face) -> None:
    face.open("number")
    face.page.locator("h1").click()
    face.page.keyboard.type("3")
    face.page.keyboard.type("19")
    face.page.keyboard.press("Backspace")
    expect(face.page.get_by_label("Her number")).to_have_value("31")
    face.page.keyboard.press("Enter")

    expect(face.page.get_by_role("heading", name="Cow 31")).to_be_visible()


def test_enter_adds_a_cow_that_nobody_knows(face: Face) -> None:
    face.open("number")
    face.page.keyboard.type("8080")
    expect(face.button("Add cow 8080")).to_be_visible()
    face.page.keyboard.press("Enter")

    expect(face.page.get_by_role("heading", name="Cow 8080")).to_be_visible()


def test_enter_on_a_key_is_that_key_and_the_focus_stays_there(face: Face) -> None:
    face.open("number")
    face.button("2").focus()
    face.page.keyboard.press("Enter")
    face.page.keyboard.press("Space")

    expect(face.page.get_by_label("Her number")).to_have_value("22")
    expect(face.button("2")).to_be_focused()


def test_the_last_cow_is_taken_back_and_put_back_by_keyboard(face: Face) -> None:
    face.put_down("212")
    _tab_to(face, face.button("Take back cow 212"))
    face.page.keyboard.press("Enter")
    face.says("Cow 212 is taken back.")
    expect(face.button("Put cow 212 back")).to_be_focused()
    face.page.keyboard.press("Enter")

    face.says("Cow 212 is back as it was.")


def test_a_cow_of_the_day_is_taken_back_by_keyboard(face: Face) -> None:
    face.put_down("212")
    face.open("cows")
    _tab_to(face, face.button("Take back cow 212"))
    face.page.keyboard.press("Enter")
    expect(face.button("Keep her")).to_be_focused()
    face.page.keyboard.press("Shift+Tab")
    expect(face.button("Yes, take her back")).to_be_focused()
    face.page.keyboard.press("Enter")

    face.is_titled("No cow is noted yet today")


def _tab_to(face: Face, wanted: Locator) -> None:
    for _ in range(MOST_TABS):
        face.page.keyboard.press("Tab")
        if wanted.evaluate(IS_FOCUSED):
            assert wanted.evaluate(OUTLINE) == "solid", "the focus can be seen"
            return
    raise AssertionError(f"{wanted} is not reached by Tab")
