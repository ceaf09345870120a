"""The home of the day, the keypad, the cows of the day and what is told, on the real page: by touch and by keyboard."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Locator, expect

from farms.models import Cow
from tests.browser.queue_day import TAG, blades_said, make_queue_day
from tests.browser.queue_face import Face, Office, phone_on
from visits.models import Blade

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


def test_the_lame_cow_is_next_and_one_tap_puts_her_in_the_crush(face: Face) -> None:
    face.is_titled("0 of 6 cows done")
    expect(face.page.locator(".q-next")).to_contain_text("211 Lame UK 0 to 3: 3; Walks badly")
    face.is_fit_for_all()

    face.page.locator(".q-next").tap()

    expect(face.page.get_by_role("heading", name="Cow 211")).to_be_visible()
    face.keep_her("211")
    face.is_titled("1 of 6 cows done")
    expect(face.page.locator(".q-next")).to_contain_text("212")
    face.is_fit_for_all()


def test_one_tap_takes_any_cow_of_the_list(face: Face) -> None:
    face.page.locator(".q-tile", has_text="214").tap()

    face.keep_her("214")

    expect(face.page.locator(".q-tile", has_text="214")).to_have_count(0)


def test_a_cow_begun_and_left_is_offered_first(face: Face) -> None:
    face.open("number")
    face.type("31")
    face.page.locator(".k-hit").tap()
    expect(face.page.get_by_role("heading", name="Cow 31")).to_be_visible()

    face.page.locator(".line-home").tap()

    expect(face.page.locator(".q-next")).to_contain_text("Go on with 31 In the crush")
    expect(face.page.locator(".q-row", has_text="211")).to_be_visible()


def test_the_list_narrows_with_each_key(face: Face) -> None:
    face.link("Another cow").tap()
    hits = face.page.locator(".k-hit b")
    expect(hits).to_have_text(["211", "212", "213", "214"])
    face.is_fit_for_all()

    face.type("21")
    expect(hits).to_have_text(["211", "212", "213", "214", "215", "217"])
    face.button("5").tap()
    expect(hits).to_have_text(["215"])
    expect(face.page.locator(".is-exact b")).to_have_text(["215"])
    expect(face.page.locator("#k-count")).to_have_text("1 cow like 215, the first is 215.")
    face.button("Rub out").tap()
    expect(hits).to_have_count(6)
    face.button("Clear").tap()
    face.button("Letters").tap()
    face.is_fit_for_all()
    face.button("A").tap()

    expect(hits).to_have_text(["A12"])


def test_two_cows_of_one_number_are_told_apart(face: Face) -> None:
    face.open("number")
    face.type("217")

    rows = face.page.locator(".k-hit")
    expect(rows).to_have_count(2)
    expect(rows.filter(has_text="White face")).to_contain_text(TAG)
    face.is_fit_for_all()
    rows.filter(has_text="White face").tap()
    face.keep_her("217")

    face.open("number")
    face.type("217")
    expect(rows.filter(has_text="White face")).to_contain_text("Done")
    expect(rows.filter(has_not_text="White face")).not_to_contain_text("Done")


def test_a_tag_that_looks_misread_is_said_and_still_goes(face: Face) -> None:
    face.open("number")
    face.type(TAG)
    expect(face.page.locator(".k-hint")).to_have_count(0)
    expect(face.page.locator(".k-hit")).to_contain_text(TAG)
    face.button("Rub out").tap()
    face.button("2").tap()

    expect(face.page.locator(".k-hint")).to_contain_text("check digit does not fit")
    face.is_fit_for_all()
    face.button(f"Add cow {TAG[:-1]}2").tap()
    expect(face.page.get_by_role("heading", name=f"Cow {TAG[:-1]}2")).to_be_visible()


def test_an_unknown_cow_is_added_on_the_spot(face: Face) -> None:
    face.open("number")
    face.type("9999")
    expect(face.page.locator("#k-count")).to_have_text("No cow like 9999 on this farm.")
    face.button("Add cow 9999").tap()
    face.keep_her("9999")
    face.all_is_sent()

    assert face.office_has() == ["9999"]
    face.page.reload()
    face.open("number")
    face.type("9999")
    expect(face.page.locator(".k-hit")).to_have_count(1)
    expect(face.page.locator(".k-hit")).to_contain_text("Done")


def test_a_second_cow_of_a_known_number_is_another_cow(face: Face) -> None:
    face.open("number")
    face.type("31")
    face.button("Another cow that wears 31: add her").tap()
    face.keep_her("31")

    assert face.office_has() == ["31"]
    herd = Cow.objects.within(face.day.house.scope).filter(number="31")
    assert herd.count() == 2
    face.open("number")
    face.type("31")
    expect(face.page.locator(".k-hit", has_text="Added at the crush today")).to_contain_text("Done")


def test_the_last_cow_is_taken_back_and_put_back(face: Face) -> None:
    face.put_down("212")
    face.put_down("213")

    face.button("Take back cow 213").tap()
    face.says("Cow 213 is taken back.")
    face.is_titled("1 of 6 cows done")
    face.is_fit_for_all()
    assert face.office_has() == ["212"]

    face.page.reload()
    face.button("Put cow 213 back").tap()
    face.says("Cow 213 is back as it was.")
    face.is_titled("2 of 6 cows done")
    assert face.office_has() == ["212", "213"]


def test_a_glove_that_bounces_takes_back_once(face: Face) -> None:
    face.put_down("212")

    face.button("Take back cow 212").dblclick()

    expect(face.button("Put cow 212 back")).to_be_visible()
    face.is_titled("0 of 6 cows done")


def test_a_change_is_taken_back_alone(face: Face) -> None:
    face.put_down("212")
    face.open("cows")
    face.page.locator(".d-cow", has_text="212").tap()
    face.page.locator(".score", has_text="1").tap()
    face.page.locator("[data-save='main']").tap()
    face.says("Cow 212 is")

    face.button("Take back the change to cow 212").tap()

    face.says("Cow 212 is as before the change.")
    face.is_titled("1 of 6 cows done")


def knife(face: Face, name: str) -> Locator:
    return face.page.locator("[data-blade]", has_text=name)


def test_a_knife_that_drags_is_changed_in_three_taps_from_the_cow_without_signal(face: Face) -> None:
    """What is said of the knives outlives the page, is listed for the evening, and is taken back like a cow."""
    face.link("No knife in hand").tap()
    knife(face, "Red handle").tap()
    face.is_titled("Red handle: 0 cows on this edge")
    face.is_fit_for_all()
    face.put_down("212")
    face.page.locator(".q-next").tap()
    face.context.set_offline(True)

    face.link("Knife 1 cow").tap()
    face.button("It drags").tap()
    face.is_fit_for_all()
    face.button("Take Blue handle: 0 cows").tap()

    face.is_titled("Blue handle: 0 cows on this edge")
    expect(knife(face, "Red handle")).to_contain_text("dull after 1 cow")
    face.link("Back to cow 211").tap()
    expect(face.page.get_by_role("heading", name="Cow 211")).to_be_visible()
    face.open("sign-off")
    expect(face.page.locator("h2:text-is('To grind tonight') + ul > li")).to_have_text(
        ["Red handle dull after 1 cow"]
    )
    face.context.set_offline(False)
    face.page.reload()
    face.all_is_sent()
    face.server.bring_back()
    red = [("Red handle", "in_hand")]
    assert blades_said(face.day) == [*red, ("Blue handle", "in_hand"), ("Red handle", "went_dull")]

    face.open()
    face.page.get_by_role("button", name="Take back the knife change").tap()
    face.all_is_sent()
    face.server.bring_back()
    assert blades_said(face.day) == red


def test_a_cracked_disc_is_out_of_use_at_once_with_a_caution(face: Face) -> None:
    face.open("knives")
    knife(face, "Grey disc").tap()
    face.button("Cracked or chipped").tap()
    face.button("Grey disc in hand").tap()
    expect(face.page.locator(".blade-asks")).to_contain_text("pull the plug")
    face.is_fit_for_all()
    face.button("Cracked").tap()

    face.is_titled("No knife in hand")
    expect(face.page.locator(".blade-asks")).to_contain_text("Grey disc is out of use")
    face.is_fit_for_all()
    face.all_is_sent()
    face.server.bring_back()
    disc = Blade.objects.within(face.day.house.scope).get(name="Grey disc")
    assert (disc.state, disc.fault) == ("out_of_use", "cracked")
