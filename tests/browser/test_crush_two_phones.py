"""Sending to a server in a process of its own: it is killed, two phones send, two tabs send."""

import json
import random
from collections.abc import Iterator
from uuid import uuid4

import pytest
from playwright.sync_api import Route

from farms.models import Cow
from tests.browser.crush_harness import (
    SAYS,
    CrushDay,
    add,
    arrived,
    call,
    cow_content,
    fetch_and_sit,
    kept,
    make_crush_day,
    send_until,
    start,
)
from tests.browser.crush_phone import Phone, Server

pytestmark = pytest.mark.xdist_group("browser")
ELSEWHERE = "/farms/"


@pytest.fixture
def day(transactional_db) -> CrushDay:
    return make_crush_day(cows=5)


@pytest.fixture
def cows(day) -> list[int]:
    return list(Cow.objects.within(day.house.scope).order_by("number").values_list("pk", flat=True))


@pytest.fixture
def server(day, cows, tmp_path) -> Iterator[Server]:
    with Server(tmp_path / "server") as server:
        yield server


@pytest.fixture
def phone(day, server, browser, tmp_path) -> Iterator[Phone]:
    with Phone(browser, tmp_path / "phone", server) as phone:
        seat(phone, day, day.house.trimmer)
        yield phone
        assert phone.complaints == []


def seat(phone: Phone, day: CrushDay, user) -> None:
    """Signed in, papers on the phone, and a page that works for that person."""
    phone.be(user)
    phone.open(ELSEWHERE)
    fetch_and_sit(phone.page, day)


def on_server(server: Server, day: CrushDay) -> list[str]:
    server.bring_back()
    return arrived(day)


def test_a_server_that_is_killed_in_the_middle_of_a_batch_loses_nothing(day, cows, server, phone):
    page = phone.page
    batches = []

    def kill_at_the_second(route: Route) -> None:
        batches.append(len(json.loads(route.request.post_data)["writings"]))
        route.continue_()
        if len(batches) == 2:
            page.wait_for_timeout(random.uniform(0, 60))
            server.stop()

    made = [add(page, day, cow, record=str(uuid4()))["uid"] for cow in cows * 10]
    page.route("**/crush/writings/", kill_at_the_second)
    start(page, day)
    while len(batches) < 2:
        page.wait_for_timeout(50)
    # The second answer may have come before the end: what is written now finds nobody for certain.
    made += [add(page, day, cow)["uid"] for cow in cows]
    page.wait_for_function(SAYS, arg=["trouble", "no_signal"])
    assert batches[:2] == [50, 10]
    server.start()
    send_until(page, "waiting", 0)
    assert on_server(server, day) == made


def test_two_phones_are_told_of_each_other(day, cows, server, phone, browser, tmp_path):
    with Phone(browser, tmp_path / "second", server) as second:
        seat(second, day, day.house.owner)
        first_made = add(phone.page, day, cows[0], note="first")
        start(phone.page, day)
        send_until(phone.page, "waiting", 0)
        second_made = add(
            second.page, day, cows[0], note="second", record="0190bbbb-0000-7000-8000-000000000001"
        )
        start(second.page, day)
        send_until(second.page, "waiting", 0)
        (other,) = [each for each in kept(second.page, day)["writings"] if each["state"] == "other"]
        assert (other["uid"], other["by"], other["shows"]) == (
            first_made["uid"],
            day.house.trimmer.name,
            False,
        )
        assert second.page.evaluate("window.told") >= 1

    send_until(phone.page, "waiting", 0)
    phone.page.wait_for_function("() => window.told > 0")
    both = {each["uid"]: each for each in kept(phone.page, day)["writings"]}
    assert [both[each["uid"]]["shows"] for each in (first_made, second_made)] == [False, True]
    assert both[second_made["uid"]]["beside"] == [first_made["uid"]]
    shown = call(phone.page, "shown.js", "shownOf", list(both.values()))
    assert shown[f"c{cows[0]}"]["uid"] == second_made["uid"]


def test_two_tabs_send_each_writing_once(day, cows, server, phone):
    tab = phone.context.new_page()
    tab.goto(server.address + ELSEWHERE)
    call(tab, "store.js", "loadVisit", day.visit.pk)
    bodies = []
    phone.context.on(
        "request", lambda request: bodies.append(request.post_data) if request.method == "POST" else None
    )
    made = [add(phone.page, day, cow)["uid"] for cow in cows]
    for page in (phone.page, tab):
        start(page, day)
    for page in (phone.page, tab):
        page.wait_for_function(SAYS, arg=["waiting", 0])

    sent = [each["uid"] for body in bodies for each in json.loads(body)["writings"]]
    assert sorted(sent) == sorted(made)
    assert sorted(on_server(server, day)) == sorted(made)


def test_a_cow_that_two_phones_add_by_the_same_number_is_one_cow_on_both(
    day, cows, server, phone, browser, tmp_path
):
    with Phone(browser, tmp_path / "second", server) as second:
        seat(second, day, day.house.owner)
        pages = (phone.page, second.page)
        made = [
            add(page, day, 0, content=cow_content(new=new_cow(key)), cowKey=f"n{key}", record=str(uuid4()))
            for page, key in zip(pages, (str(uuid4()), str(uuid4())), strict=True)
        ]
        for page in pages:
            start(page, day)
            send_until(page, "waiting", 0)
        # The phone may have asked of itself meanwhile: what it was told counts from its start.
        send_until(phone.page, "waiting", 0)
        phone.page.wait_for_function("() => window.told > 0")
        # Written in one moment by two clocks: which is the later hangs on the way here, that both agree does not.
        (shown_on_both,) = {tuple(what_shows(page, day)) for page in pages}
        assert len(shown_on_both) == 1
        assert shown_on_both[0] in [each["uid"] for each in made]
    server.bring_back()
    assert Cow.objects.within(day.house.scope).filter(number="9999").count() == 1


def what_shows(page, day: CrushDay) -> list[str]:
    """The ids of what shows on a phone, by its rows and by its list of cows."""
    writings = kept(page, day)["writings"]
    listed = [each["uid"] for each in call(page, "shown.js", "shownOf", writings).values()]
    assert listed == [each["uid"] for each in writings if each["shows"]]
    return listed


def new_cow(uid: str) -> dict[str, object]:
    return {"uid": uid, "number": "9999", "is_another": False}
