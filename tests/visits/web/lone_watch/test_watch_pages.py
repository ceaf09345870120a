"""The pages of the watch, and the line on every other page that asks."""

import pytest
from django.db import connection
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.urls import reverse

from tests.factories import make_house
from tests.visits.services.lone_watch.watched import add_contact, again, alarmed, look, rules, sent, watch_of
from trimops.errands.models import Errand
from visits.domain.lone_watch.watch_cautions import PLAINLY
from visits.domain.lone_watch.watch_states import WatchState
from visits.models import LoneWatch, WatchContact

RULES = {"is_on": "on", "watches_plan": "on", "grace_minutes": 45, "answer_minutes": 10, "repeat_minutes": 15}


def words(answer):
    return " ".join(answer.content.decode().split())


def test_what_it_cannot_do_stands_on_it_plainly(desk):
    page = words(desk.get(reverse("watch")))
    for line in PLAINLY:
        assert line in page


def test_the_rules_are_kept(house, desk):
    desk.post(reverse("watch"), RULES)
    assert rules(house).grace_minutes == 45


def test_where_nothing_can_leave_it_says_so_and_keeps_what_was_typed(house, desk, settings):
    settings.EMAIL_HOST = ""
    page = words(desk.get(reverse("watch")))
    assert "the watch is on, but can tell nobody" in page
    assert "no mail server" in page
    assert "not by SMS" in page
    refused = desk.post(reverse("watch"), RULES)
    assert refused.status_code == 409
    assert 'value="45"' in words(refused)
    assert rules(house).grace_minutes == 30


def test_a_business_that_never_heard_of_it_is_told_what_it_is(db):
    house = make_house("Fell & Beck")
    client = Client()
    client.force_login(house.owner)
    page = words(client.get(reverse("watch")))
    assert "Nobody looks out for who works alone" in page
    assert "Nobody yet." in page


def test_somebody_is_put_on_the_list_mended_and_taken_off(house, desk):
    new = {"name": "A. Aunt", "email": "aunt@home.example", "told_by": "mail", "turn": 3, "van": house.van.pk}
    desk.post(reverse("watch_contact_new"), new)
    aunt = WatchContact.objects.within(house.scope).get(name="A. Aunt")
    assert aunt.van == house.van
    assert "for Van 1 only" in words(desk.get(reverse("watch")))

    address = reverse("watch_contact", args=[aunt.pk])
    desk.post(address, {**new, "told_by": "both", "phone": "0199 555 030"})
    assert WatchContact.objects.within(house.scope).get(pk=aunt.pk).told_by == "both"
    refused = desk.post(address, {**new, "told_by": "sms", "phone": ""})
    assert refused.status_code == 400
    assert "by which they are told" in words(refused)
    desk.post(address, {"act": "drop"})
    assert not WatchContact.objects.within(house.scope).filter(pk=aunt.pk).exists()


def test_a_test_is_sent_and_its_log_shown(house, desk):
    page = desk.post(reverse("watch_try"), follow=True)
    assert "Test: 2 people told" in words(page)
    assert "No answer" in words(page)
    assert len(sent(house)) == 2
    assert Errand.objects.within(house.scope).filter(job="trimops.send_alarm").count() == 2


def test_every_page_of_the_trimmer_asks_and_one_tap_answers(house, desk):
    watch = watch_of(house)
    look(watch, 30)
    for name in ("this_week", "vans", "watch"):
        assert "Are you well? Low Croft" in words(desk.get(reverse(name))), name
    desk.post(reverse("watch_well", args=[watch.pk]), {"act": "more"})
    assert again(watch).state == WatchState.WATCHING
    assert "Are you well?" not in words(desk.get(reverse("this_week")))


def test_finished_by_one_tap(house, desk):
    watch = alarmed(house)
    assert "Others are told" in words(desk.get(reverse("this_week")))
    page = words(desk.post(reverse("watch_well", args=[watch.pk]), {"act": "done"}, follow=True))
    assert again(watch).is_over
    assert "the watch is over" in page


@pytest.mark.parametrize("person", ["owner", "office", "client"])
def test_nobody_else_is_asked(house, person):
    look(watch_of(house), 30)
    client = Client()
    client.force_login(getattr(house, person))
    assert "Are you well?" not in words(client.get("/", follow=True))


def test_who_is_watched_and_what_happened_is_shown(house, desk):
    watch = alarmed(house)
    page = words(desk.get(reverse("watch")))
    assert "1 visit is watched now" in page
    assert "Others told" in page
    log = words(desk.get(reverse("lone_watch", args=[watch.pk])))
    for part in ("did not check in", "N. Neighbour", "neighbour@home.example", "Waiting to go", "No answer"):
        assert part in log


def test_as_many_questions_for_many_rows_as_for_few(house, desk):
    asked = []
    # The first page after signing in writes the session anew.
    desk.get(reverse("watch"))
    for count in (1, 7):
        for n in range(count):
            add_contact(house, f"C. {count} {n}", email=f"c{count}{n}@home.example", van=house.van)
            began = {"began_at": house.business.created_at, "expected_finish": house.business.created_at}
            LoneWatch.objects.create(
                business=house.business,
                trimmer=house.trimmer,
                van=house.van,
                state="ended",
                ended_at=house.business.created_at,
                ended_how="tried",
                is_test=True,
                **began,
            )
        with CaptureQueriesContext(connection) as queries:
            assert desk.get(reverse("watch")).status_code == 200
        asked.append(len(queries))
    assert asked[0] == asked[1] <= 30
