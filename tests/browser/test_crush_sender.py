"""Sending from the phone to the real endpoint: lost answers, repeats, sign-ins that ended, what is refused."""

import json
from collections.abc import Iterator
from datetime import timedelta
from uuid import uuid4

import pytest
from django.conf import settings
from django.test import Client
from django.urls import reverse
from django.utils import timezone
from playwright.sync_api import Page, Route

from farms.models import Cow
from tests.browser.borrowed import borrowed
from tests.browser.conftest import PHONE, Site
from tests.browser.crush_harness import (
    SAYS,
    START,
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
from visits.models import CrushWriting, Trim, TrimPhoto, Visit

pytestmark = pytest.mark.xdist_group("browser")
# A page of ours that has nothing to do with the crush: the test starts the sender itself.
ELSEWHERE = "/farms/"
WRITINGS = "**/crush/writings/"
PICTURE = """async ([visit, record]) => {
  const canvas = Object.assign(document.createElement("canvas"), { width: 40, height: 30 });
  const blob = await new Promise((take) => canvas.toBlob(take, "image/jpeg"));
  return (await import("/static/visits/crush/store.js")).addPhoto({ visit, record, foot: "LH", blob });
}"""


@pytest.fixture
def day(request, transactional_db) -> CrushDay:
    return make_crush_day(cows=5, is_begun=getattr(request, "param", True))


@pytest.fixture
def cows(day) -> list[int]:
    return list(Cow.objects.within(day.house.scope).order_by("number").values_list("pk", flat=True))


@pytest.fixture
def yard(day, browser, served) -> Iterator[Site]:
    """The trimmer's phone. Lines that break are the matter here, so the console may complain of them."""
    with borrowed(browser, served, PHONE) as context:
        site = Site(served, context.new_page(), day.house)
        site.page.on("pageerror", lambda fault: site.complaints.append(str(fault)))
        sit(site, day, day.house.trimmer)
        yield site
    assert site.complaints == []


@pytest.fixture
def page(yard) -> Page:
    return yard.page


def sign_in(yard: Site, user) -> None:
    # As a sign-in does, with a new token against forged requests.
    yard.page.context.clear_cookies(name="csrftoken")
    yard.be(user)


def sit(yard: Site, day: CrushDay, user) -> None:
    sign_in(yard, user)
    yard.open(ELSEWHERE)
    fetch_and_sit(yard.page, day)


def test_what_waits_arrives_in_order_and_the_line_says_so(day, cows, page):
    made = [add(page, day, cow)["uid"] for cow in cows[:3]]
    start(page, day)
    status = send_until(page, "waiting", 0)

    assert (status["trouble"], status["refused"]) == ("", 0)
    assert status["sent_at"] is not None
    assert arrived(day) == made
    assert Trim.objects.within(day.house.scope).filter(visit=day.visit).count() == 3
    writings = kept(page, day)["writings"]
    assert {each["state"] for each in writings} == {"sent"}
    assert all(each["shows"] for each in writings)


def test_a_tap_is_sent_by_itself(day, cows, page):
    start(page, day)
    send_until(page, "waiting", 0)
    add(page, day, cows[0])
    page.wait_for_function("() => window.said.some((status) => status.waiting === 1)")
    page.wait_for_function(SAYS, arg=["waiting", 0])
    assert len(arrived(day)) == 1


def test_an_answer_that_is_lost_is_asked_for_again_and_nothing_comes_twice(day, cows, page):
    lost = []

    def lose(route: Route) -> None:
        answer = route.fetch()
        lost.append(answer.status)
        route.abort()

    page.route(WRITINGS, lose)
    made = [add(page, day, cow)["uid"] for cow in cows[:3]]
    start(page, day)
    send_until(page, "trouble", "no_signal")
    assert kept(page, day)["writings"][0]["state"] == "waiting"
    page.unroute(WRITINGS)
    send_until(page, "waiting", 0)

    assert lost[0] == 200, "the server had answered"
    assert arrived(day) == made
    assert Trim.objects.within(day.house.scope).filter(visit=day.visit).count() == 3


def test_a_large_day_goes_in_batches_of_fifty_and_is_halved_when_it_is_too_large(day, cows, page):
    sizes = []

    def narrow(route: Route) -> None:
        size = len(json.loads(route.request.post_data)["writings"])
        sizes.append(size)
        if size > 20:
            route.fulfill(status=413, body="{}")
        else:
            route.continue_()

    page.route(WRITINGS, narrow)
    after = None
    for _ in range(60):
        after = add(page, day, cows[0], after=after)["uid"]
    start(page, day)
    send_until(page, "waiting", 0)

    assert sizes[:3] == [50, 25, 12]
    assert len(arrived(day)) == 60
    assert Trim.objects.within(day.house.scope).filter(visit=day.visit).count() == 1


def test_one_that_is_too_large_alone_is_kept_for_mending_and_holds_nothing_up(day, cows, page):
    made = [add(page, day, cow)["uid"] for cow in cows[:3]]
    heavy = made[1]
    page.route(
        WRITINGS,
        lambda route: route.fulfill(status=413) if heavy in route.request.post_data else route.continue_(),
    )
    start(page, day)
    status = send_until(page, "refused", 1)

    assert status["waiting"] == 0
    assert set(arrived(day)) == set(made) - {heavy}
    (refused,) = [each for each in kept(page, day)["writings"] if each["state"] == "refused"]
    assert refused["faults"] == [{"field": "", "reason": "Too large to be sent."}]


def test_what_cannot_be_read_waits_and_holds_nothing_up(day, cows, page):
    made = [add(page, day, cow)["uid"] for cow in cows]
    bad = made[2]
    page.route(
        WRITINGS,
        lambda route: route.fulfill(status=400) if bad in route.request.post_data else route.continue_(),
    )
    start(page, day)
    send_until(page, "trouble", "server")
    page.wait_for_function(SAYS, arg=["waiting", 1])
    assert set(arrived(day)) == set(made) - {bad}


def test_a_refused_one_is_kept_with_its_faults_and_mending_it_is_one_more_writing(day, cows, page):
    content = cow_content(cows[0])
    content["entry"]["mobility_scale"], content["entry"]["mobility_score"] = "UK0-3", 9
    bad = add(page, day, cows[0], content=content)
    good = add(page, day, cows[1])
    start(page, day)
    send_until(page, "refused", 1)

    assert arrived(day) == [good["uid"]]
    held = {each["uid"]: each for each in kept(page, day)["writings"]}[bad["uid"]]
    assert held["state"] == "refused"
    assert "mobility_score" in held["faults"][0]["field"]
    assert held["faults"][0]["reason"]
    mended = add(page, day, cows[0], mends=bad["uid"])
    send_until(page, "refused", 0)
    page.wait_for_function(SAYS, arg=["waiting", 0])
    assert arrived(day) == [good["uid"], mended["uid"]]


def test_a_refused_one_that_was_written_over_already_needs_no_mending(day, cows, page):
    content = cow_content(cows[0])
    content["entry"]["mobility_scale"], content["entry"]["mobility_score"] = "UK0-3", 9
    bad = add(page, day, cows[0], content=content)
    good = add(page, day, cows[0], after=bad["uid"])
    start(page, day)
    status = send_until(page, "waiting", 0)
    assert status["refused"] == 0
    assert [each["uid"] for each in kept(page, day)["writings"]] == arrived(day) == [good["uid"]]


def test_photos_go_one_by_one_after_the_cows(day, cows, page):
    made = add(page, day, cows[0])
    notes = [page.evaluate(PICTURE, [day.visit.pk, made["record"]]) for _ in range(2)]
    start(page, day)
    send_until(page, "waiting", 0)

    arrived(day)
    photos = TrimPhoto.objects.within(day.house.scope).order_by("uid")
    assert [str(photo.uid) for photo in photos] == [note["uid"] for note in notes]
    assert {photo.trim.cow_id for photo in photos} == {cows[0]}
    assert {note["state"] for note in kept(page, day)["photos"]} == {"sent"}


def test_a_photo_whose_answer_is_lost_arrives_once(day, cows, page):
    made = add(page, day, cows[0])
    page.evaluate(PICTURE, [day.visit.pk, made["record"]])
    page.route("**/crush/photos/**", lambda route: (route.fetch(), route.abort()))
    start(page, day)
    send_until(page, "trouble", "no_signal")
    page.unroute("**/crush/photos/**")
    send_until(page, "waiting", 0)
    arrived(day)
    assert TrimPhoto.objects.within(day.house.scope).count() == 1


def test_a_sign_in_that_ended_is_said_and_sending_goes_on_after_the_next_one(day, cows, page, yard):
    page.context.clear_cookies(name=settings.SESSION_COOKIE_NAME)
    made = add(page, day, cows[0])
    start(page, day)
    status = send_until(page, "trouble", "sign_in")
    assert status["waiting"] == 1
    sign_in(yard, day.house.trimmer)
    send_until(page, "waiting", 0)
    assert arrived(day) == [made["uid"]]


@pytest.mark.parametrize("token", ["", "x" * 32])
def test_a_token_that_is_missing_or_refused_is_fetched_anew(token, day, cows, page):
    made = add(page, day, cows[0])
    start(page, day)
    page.evaluate("(token) => { document.cookie = `csrftoken=${token};path=/`; }", token)
    send_until(page, "waiting", 0)
    assert arrived(day) == [made["uid"]]


def test_nothing_is_sent_under_another_persons_name(day, cows, page, yard):
    made = add(page, day, cows[0])
    sign_in(yard, day.house.owner)
    start(page, day)
    send_until(page, "trouble", "other_person")

    assert arrived(day) == []
    call(page, "store.js", "loadVisit", day.visit.pk)
    status = send_until(page, "trouble", "other_person")
    assert status["waiting"] == 0
    assert [(each["farm"], each["waiting"]) for each in status["others_wait"]] == [("Low Croft", 1)]
    sit(yard, day, day.house.trimmer)
    start(page, day)
    send_until(page, "waiting", 0)
    assert arrived(day) == [made["uid"]]
    row = CrushWriting.objects.within(day.house.scope).get()
    assert row.by == day.house.trimmer


def test_a_visit_that_is_not_ours_any_more_is_said(day, cows, page):
    add(page, day, cows[0])
    page.route(WRITINGS, lambda route: route.fulfill(status=404))
    start(page, day)
    assert send_until(page, "trouble", "not_yours")["waiting"] == 1


@pytest.mark.parametrize("day", [False], indirect=True)
def test_the_start_of_the_visit_is_told_even_before_the_first_cow(day, page):
    begun = {"at": (timezone.now() - timedelta(minutes=9)).isoformat(), "checked": True}
    call(page, "store.js", "putBegun", day.visit.pk, begun)
    start(page, day)
    send_until(page, "begun", 0)

    assert kept(page, day)["papers"]["visit"]["state"] == "under_way"
    assert Visit.objects.within(day.house.scope).get().state == "under_way"


def test_another_days_cows_are_sent_too(day, cows, page):
    made = add(page, day, cows[0])
    page.evaluate(START, None)
    send_until(page, "waiting", 0)
    assert arrived(day) == [made["uid"]]


def test_more_than_two_hundred_writings_of_others_are_fetched_to_the_last(day, cows, page):
    other = Client()
    other.force_login(day.house.owner)
    uids = [str(uuid4()) for _ in range(230)]
    at = timezone.now().isoformat()
    plain = {
        "kind": "cow",
        "record": str(uuid4()),
        "after": None,
        "made_at": at,
        "not_before": None,
        "is_gone": False,
    }
    for some in (uids[:100], uids[100:200], uids[200:]):
        writings = [{**plain, "uid": uid, "content": cow_content(cows[0])} for uid in some]
        body = {"phone": str(uuid4()), "sent_at": at, "seen": 0, "begun": None, "writings": writings}
        address = reverse("crush_writings", args=[day.visit.pk])
        assert other.post(address, body, content_type="application/json").status_code == 200
    start(page, day)
    send_until(page, "waiting", 0)
    assert {each["uid"] for each in kept(page, day)["writings"]} == set(uids)


@pytest.mark.parametrize("hours", [-7, 5])
def test_a_phone_whose_clock_is_wrong_by_hours_is_put_right_by_the_server(hours, day, cows, page):
    page.clock.set_system_time(timezone.now() + timedelta(hours=hours))
    made = add(page, day, cows[0])
    start(page, day)
    send_until(page, "waiting", 0)

    (row,) = CrushWriting.objects.within(day.house.scope)
    assert str(row.uid) == made["uid"]
    assert abs(row.made_at - timezone.now() - timedelta(hours=hours)) < timedelta(minutes=2)
    assert abs(row.placed_at - timezone.now()) < timedelta(minutes=2)


def test_the_line_never_says_sent_before_the_server_has_answered(day, cows, page):
    page.evaluate("import('/static/visits/crush/sender.js').then(() => null)")
    page.context.set_offline(True)
    start(page, day)
    status = send_until(page, "trouble", "no_signal")
    assert status["sent_at"] is None
    page.context.set_offline(False)
    page.wait_for_function("() => window.said.at(-1).sent_at !== null")


@pytest.mark.parametrize("token", ["kept", ""])
def test_a_visit_that_is_not_ours_holds_up_no_other(token, day, cows, page):
    made = add(page, day, cows[0])
    if not token:
        page.context.clear_cookies(name="csrftoken")
    page.evaluate(START, day.visit.pk + 1000)
    send_until(page, "trouble", "not_yours")
    assert arrived(day) == [made["uid"]]


def test_papers_that_cannot_be_had_anew_hold_up_nothing(day, cows, page):
    page.evaluate(
        """async (key) => {
          const { write } = await import("/static/visits/crush/phone_db.js");
          await write(["days"], async (transaction) => {
            const days = transaction.objectStore("days");
            await days.put({ ...(await days.get(key)), papers_at: "2026-03-02T08:00:00Z" });
          });
        }""",
        f"{day.house.business.pk}:{day.house.trimmer.pk}/{day.visit.pk}",
    )
    asked = []
    page.route("**/papers.json", lambda route: (asked.append(1), route.fulfill(status=500)))
    made = add(page, day, cows[0])
    start(page, day)
    send_until(page, "waiting", 0)
    assert arrived(day) == [made["uid"]]
    assert asked == [1], "old papers are asked for once when the page is opened"
