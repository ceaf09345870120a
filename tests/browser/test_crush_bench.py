"""The bench around the cows, on a phone held in one hand: start check, wash-down, kit, sign-off, this phone, days."""

from collections.abc import Iterator
from decimal import Decimal

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.crush_bench_site import Bench, make_bench
from tests.browser.crush_harness import call
from tests.browser.queue_face import Office
from visits.domain.kit.stock_kinds import MovementKind
from visits.domain.visit_states import VisitState
from visits.models import StockMovement, WashDown

pytestmark = pytest.mark.xdist_group("browser")


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


@pytest.fixture
def not_begun(transactional_db, browser: Browser, office: Office) -> Iterator[Bench]:
    with make_bench(browser, office, is_begun=False) as bench:
        yield bench


def heading(page: Page):
    return page.get_by_role("heading", level=1)


def press(page: Page, name: str) -> None:
    page.get_by_role("button", name=name, exact=True).click()


def test_nothing_begins_before_everything_is_ticked_and_all_of_it_goes_by_keyboard(not_begun: Bench) -> None:
    page = not_begun.open()
    expect(heading(page)).to_contain_text("Before the first cow")
    expect(page.get_by_text("mind the dog")).to_be_visible()
    expect(page.get_by_role("link", name="J. Farmer")).to_have_attribute("href", "tel:+447700900123")
    ticks = page.get_by_role("checkbox").count()

    page.locator("#before-1").focus()
    for _ in range(1, ticks):
        page.keyboard.press("Space")
        page.keyboard.press("Tab")
    page.keyboard.press("Enter")

    expect(page.locator("#before-missing")).to_have_text(
        "Still to check: Cut-resistant gloves under disposable ones."
    )
    expect(page.locator("#before-0")).to_be_focused()
    not_begun.server.bring_back()
    assert not_begun.visit().state == VisitState.PLANNED

    page.keyboard.press("Space")
    expect(page.locator("#before-missing")).to_have_text("All ticked.")
    page.get_by_role("button", name="All checked: begin").press("Enter")

    expect(heading(page)).to_contain_text("done")
    not_begun.comes_true(lambda: not_begun.visit().state == VisitState.UNDER_WAY)
    assert not_begun.visit().start_checked


def test_a_visit_begun_elsewhere_is_not_asked_about_again(bench: Bench) -> None:
    page = bench.open()
    expect(heading(page)).to_contain_text("done")

    bench.open("begin")

    expect(heading(page)).to_contain_text("begun at")
    expect(page.get_by_role("checkbox")).to_have_count(0)


def put_down_wash(page: Page) -> None:
    press(page, "Iodophor")
    page.get_by_label("How strong").fill("1:100")
    page.get_by_label("Minutes it stayed on").fill("5")
    press(page, "Keep this wash-down")


def washes(bench: Bench) -> list[tuple[str, str, Decimal]]:
    rows = WashDown.objects.within(bench.day.house.scope)
    return list(rows.values_list("substance", "dilution", "contact_minutes"))


def test_a_wash_down_is_put_down_changed_and_taken_back(bench: Bench) -> None:
    page = bench.open("wash")
    press(page, "Yard wash")
    expect(page.locator(".bucket-needs")).to_have_text("100 ml of product, water up to 10 l.")
    press(page, "Keep this wash-down")
    expect(heading(page)).to_contain_text("Washed down today")
    expect(page.locator("#wash-log + ul")).to_contain_text("100 ml of Yard wash in 10 l")
    bench.comes_true(lambda: washes(bench) == [("Iodophor", "1:100", Decimal("5.0"))])
    assert ledger(bench) == {"Yard wash": 100}

    page.get_by_role("button", name="Change the wash-down").click()
    page.get_by_label("How strong").fill("1:50")
    press(page, "Keep the change")
    bench.comes_true(lambda: washes(bench) == [("Iodophor", "1:50", Decimal("5.0"))])
    assert ledger(bench) == {"Yard wash": 200}

    page.get_by_role("button", name="Take back the wash-down").click()
    expect(heading(page)).to_have_text("No wash-down yet on this visit")
    bench.comes_true(lambda: washes(bench) == [])
    assert ledger(bench) == {"Yard wash": 0}


def test_a_wash_down_wants_three_things_and_a_glove_that_taps_twice_washes_once(bench: Bench) -> None:
    page = bench.open("wash")
    press(page, "Keep this wash-down")
    expect(page.locator("#wash-substance")).to_be_focused()
    expect(page.locator(".errorlist li")).to_have_count(3)
    assert bench.waiting() == 0

    put_down_wash(page)
    press(page, "Keep this wash-down")

    expect(page.locator(".said")).to_contain_text("kept already")
    expect(page.locator("#wash-log + ul > li")).to_have_count(1)


def ledger(bench: Bench) -> dict[str, Decimal]:
    used: dict[str, Decimal] = {}
    rows = StockMovement.objects.within(bench.day.house.scope).filter(kind=MovementKind.USED)
    for row in rows.select_related("consumable"):
        used[row.consumable.name] = used.get(row.consumable.name, Decimal(0)) - row.quantity
    return used


def test_kit_counts_itself_and_a_correction_reaches_the_ledger(bench: Bench) -> None:
    page = bench.open("kit")
    expect(heading(page)).to_have_text("No kit used yet")
    wraps = page.get_by_role("group", name="Wrap").get_by_role("textbox")
    wraps.fill("many")
    wraps.blur()
    expect(page.get_by_text("Give a number, 0 or more.")).to_be_visible()
    assert bench.waiting() == 0

    bench.put_down_block()
    wood = page.get_by_role("group", name="Wooden block")
    expect(wood.get_by_role("textbox")).to_have_value("1")
    for name in ("1 more", "1 more", "1 more", "1 fewer"):
        wood.get_by_role("button", name=name).click()
    glue = page.get_by_role("group", name="Glue").get_by_role("textbox")
    glue.fill("20")
    glue.press("Enter")

    expect(wood.get_by_role("textbox")).to_have_value("3")
    expect(page.get_by_text("1 counted from the cows, 2 more by hand.")).to_be_visible()
    bench.comes_true(lambda: ledger(bench) == {"Wooden block": Decimal(3), "Glue": Decimal(20)})


def test_the_sign_off_finishes_the_visit_and_can_be_changed(bench: Bench) -> None:
    page = bench.open("sign-off")
    bench.put_down_block()
    expect(page.get_by_text("Blocks to come off: 1")).to_be_visible()
    expect(page.get_by_label("What was done")).to_have_value("1 cow: 1 corrective trim.\n1 block on.")
    to_do = page.get_by_label("For the farm to do")
    assert "not a diagnosis" in to_do.input_value()

    press(page, "Finish the visit")
    expect(page.locator("#sign-received_by")).to_be_focused()
    bench.server.bring_back()
    assert bench.visit().state == VisitState.UNDER_WAY, "not before somebody received it"

    to_do.fill("Straw in the pen of 100.")
    press(page, "J. Farmer")
    press(page, "Finish the visit")
    expect(heading(page)).to_contain_text("signed off at")
    bench.comes_true(lambda: bench.visit().state == VisitState.FINISHED)
    kept = bench.visit()
    assert (kept.signed_by, kept.farm_to_do) == ("J. Farmer", "Straw in the pen of 100.")
    assert (kept.was_done, kept.washed_down) == ("1 cow: 1 corrective trim.\n1 block on.", False)

    press(page, "Change the sign-off")
    page.get_by_label("Who received it").fill("The herd manager")
    press(page, "Keep the change")
    bench.comes_true(lambda: bench.visit().signed_by == "The herd manager")

    bench.open("wash")
    put_down_wash(page)
    bench.comes_true(lambda: bench.visit().washed_down)
    assert bench.visit().farm_to_do == "Straw in the pen of 100."


def test_half_an_account_outlives_the_phone_being_switched_off(bench: Bench) -> None:
    page = bench.open("sign-off")
    page.get_by_label("What was done").fill("Twelve, and the bull.")
    page.get_by_label("Who received it").fill("J.")
    bench.comes_true(lambda: half_said(bench) == ["J."])

    page.reload()

    expect(page.get_by_label("What was done")).to_have_value("Twelve, and the bull.")
    expect(page.get_by_label("Who received it")).to_have_value("J.")


def half_said(bench: Bench) -> list[str]:
    phone = call(bench.page, "store.js", "loadVisit", bench.day.visit.pk)["phone"]
    return [words["received_by"] for words in phone.get("sign_off_begun", {}).values()]


def test_clearing_is_refused_while_something_waits_and_asked_once_when_all_is_sent(bench: Bench) -> None:
    page = bench.open("phone")
    page.context.set_offline(True)
    bench.put_down_block()
    page.get_by_role("button", name="Clear this visit from the phone").click()
    expect(page.locator(".said")).to_contain_text("1 thing of it waits to be sent")
    assert len(call(page, "store.js", "daysKept")) == 1

    page.context.set_offline(False)
    press(page, "Send now")
    expect(heading(page)).to_contain_text("nothing waits")
    page.get_by_role("button", name="Clear this visit from the phone").click()
    page.get_by_role("button", name="Clear it").click()

    page.wait_for_url("**/visits/crush/")
    assert call(page, "store.js", "daysKept") == []


def test_the_switches_are_kept_on_this_phone(bench: Bench) -> None:
    page = bench.open("phone")
    expect(page.get_by_label("A short sound")).not_to_be_checked()

    page.get_by_label("A short sound").check()
    page.get_by_label("Outdoor").check()
    page.reload()

    expect(page.get_by_label("A short sound")).to_be_checked()
    assert page.evaluate("document.documentElement.dataset.theme") == "outdoor"
    page.get_by_label("Outdoor").uncheck()
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(247, 246, 240)"


def test_the_days_page_brings_the_papers_here_and_then_does_without_signal(
    bench: Bench, request: pytest.FixtureRequest
) -> None:
    name = bench.day.house.farm.name
    page = bench.go_to("/visits/crush/")
    expect(heading(page)).to_have_text("1 visit, not on this phone yet")

    press(page, "Fetch its papers")
    expect(heading(page)).to_have_text("1 visit, it is on this phone")
    bench.wait_until_kept()
    bench.server.stop()
    request.addfinalizer(bench.server.start)
    page.reload()

    expect(page.get_by_text("No signal: what lies on this phone opens all the same.")).to_be_visible()
    page.get_by_role("link", name=name).click()
    page.wait_for_url(f"**{bench.day.path}")
    expect(heading(page)).to_contain_text("done")
