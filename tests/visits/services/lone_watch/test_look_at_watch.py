"""A look at a watch: asked, told, told again, once each, whoever looks and however often."""

from datetime import timedelta

import pytest
from django.db import transaction

from tests.factories import (
    TUESDAY_TEN,
    make_cow,
    make_farm,
    make_van,
    planned,
    put_down,
    trimmed_foot,
    under_way,
)
from tests.many_hands import ManyHands
from tests.visits.services.lone_watch.watched import (
    add_contact,
    addresses,
    after,
    again,
    alarmed,
    calls,
    log,
    look,
    sent,
    watch_of,
    watched_house,
    went,
)
from trimops.outbox.models import Outgoing, WebhookAddress
from visits.domain.lone_watch.watch_states import WatchEnd, WatchState
from visits.domain.lone_watch.watch_step import MOST_TELLINGS
from visits.models import LoneWatch, Visit, WatchContact
from visits.services.lone_watch.begin_watch import begin_watch
from visits.services.lone_watch.check_in import check_in
from visits.services.lone_watch.look_at_watch import look_at_watch
from visits.services.lone_watch.note_heard import note_heard

NOBODY_THERE = {"EMAIL_HOST": "127.0.0.1", "EMAIL_PORT": 1, "SMS": ""}
"""A mail server that refuses at once: what is written waits."""


@pytest.fixture
def hands(transactional_db, tmp_path, monkeypatch, settings):
    for name, value in NOBODY_THERE.items():
        setattr(settings, name, value)
    yield ManyHands(tmp_path, monkeypatch)
    # Before the database is put in order again: it must be the one in memory by then.
    monkeypatch.undo()


def test_of_many_who_look_at_the_same_moment_one_asks_and_one_tells(hands):
    """Two workers, an errand that runs twice: each message leaves once."""
    house = watched_house()
    watch = watch_of(house)
    # Alone first: the file's journal is set up by whoever opens it first, and no two can.
    assert hands(lambda _: addresses(house), [0]) == [[]]
    for minutes in (30, 40):
        moment = after(watch, minutes)
        hands(lambda _, moment=moment: look_at_watch(watch_id=watch.pk, at=moment) and None, range(4))
    (names,) = hands(lambda _: addresses(house), [0])
    assert names == [house.trimmer.email, "neighbour@home.example"]


def test_a_word_that_races_with_the_alarm_leaves_no_alarm_standing(hands):
    """Whoever comes first: he is well, and who was told hears of it or never gets the alarm."""
    house = watched_house()
    watch = watch_of(house)
    assert hands(lambda _: look(watch, 30).state, [0]) == [WatchState.ASKED]
    moment = after(watch, 40)
    does = {
        "tell": lambda: look_at_watch(watch_id=watch.pk, at=moment) and None,
        "well": lambda: check_in(watch=watch, is_done=True, at=moment, who="Ada") and None,
    }
    hands(lambda what: does[what](), ["tell", "well"])
    ((state, mails),) = hands(lambda _: (again(watch).state, sent(house)), [0])
    assert state == WatchState.ENDED
    alarms = [mail for mail in mails if "did not check in" in mail.subject]
    taken_back = [mail for mail in mails if mail.subject.startswith("All is well")]
    assert all(mail.state == "left" for mail in alarms) or len(taken_back) == len(alarms)


def test_he_is_asked_by_mail_and_sms_when_the_grace_is_over(house):
    watch = watch_of(house)
    assert look(watch, 29).state == WatchState.WATCHING
    assert not sent(house)
    asked = look(watch, 30)
    assert (asked.state, asked.answer_until) == (WatchState.ASKED, after(watch, 40))
    assert addresses(house) == ["0199 555 010", house.trimmer.email]
    assert "Are you well" in sent(house)[0].body


def test_then_the_first_on_the_list_then_the_next_then_the_first_again(house):
    watch = watch_of(house)
    for minutes in range(30, 101):
        look(watch, minutes)
    assert addresses(house)[2:] == [
        "neighbour@home.example",
        "0199 555 020",
        "neighbour@home.example",
        "0199 555 020",
        "neighbour@home.example",
    ]
    assert [call.at for call in calls(watch)[1:3]] == [after(watch, 40), after(watch, 55)]


def test_the_alarm_says_where_and_since_when(house):
    house.farm.phone, house.farm.access_notes = "0199 555 011", "Gate code 12"
    house.farm.save()
    alarmed(house)
    body = sent(house)[2].body
    for part in (
        "Low Croft",
        "geo:54.100000,-2.300000",
        "Gate code 12",
        "0199 555 011",
        "0199 555 010",
        "999",
    ):
        assert part in body, part
    assert "/watch/by/{secret}/" in body


def test_two_looks_at_the_same_moment_do_what_one_does(house):
    watch = watch_of(house)
    for minutes in (30, 30, 40, 40, 55, 55):
        look(watch, minutes)
    assert len(calls(watch)) == 3


def test_killed_in_the_middle_nothing_has_happened(house):
    watch = watch_of(house)
    with pytest.raises(KeyboardInterrupt), transaction.atomic():
        look_at_watch(watch_id=watch.pk, at=after(watch, 30))
        raise KeyboardInterrupt
    assert again(watch).state == WatchState.WATCHING
    assert not sent(house)
    look(watch, 31)
    assert len(sent(house)) == 2


def test_the_server_was_away_for_an_hour_he_is_asked_first_and_briefly(house):
    watch = watch_of(house)
    back = look(watch, 90)
    assert (back.state, back.answer_until) == (WatchState.ASKED, after(watch, 93))
    assert "We were away" in log(watch)
    assert look(watch, 93).state == WatchState.TOLD


def test_the_server_was_away_but_his_phone_is_in_touch_he_has_his_time(house):
    watch = watch_of(house)
    note_heard(scope=house.scope, trimmer=house.trimmer, at=after(watch, 89))
    assert look(watch, 90).answer_until == after(watch, 100)


def test_the_server_was_away_after_the_question_phones_speak_first_once(house):
    watch = watch_of(house)
    look(watch, 30)
    assert look(watch, 100).answer_until == after(watch, 103)
    assert look(watch, 110).state == WatchState.TOLD, "not put off a second time"


def test_cows_that_are_noted_move_the_question(house):
    watch = watch_of(house)
    visit = watch.visit
    put_down(visit, make_cow(house.farm, "7"), trimmed_foot(), at=after(watch, 20))
    left = visit.head_count - 1
    more = left * visit.expected_minutes / visit.head_count + 20
    assert look(watch, 30).next_at == after(watch, 20 + more + 30)


def test_a_cow_noted_after_the_question_answers_it(house):
    watch = watch_of(house)
    look(watch, 30)
    put_down(watch.visit, make_cow(house.farm, "7"), trimmed_foot(), at=after(watch, 33))
    assert look(watch, 34).state == WatchState.WATCHING
    assert "noted on the phone after the question" in log(watch)


def test_a_cow_noted_by_somebody_else_does_not(house):
    watch = watch_of(house)
    look(watch, 30)
    trim = put_down(watch.visit, make_cow(house.farm, "7"), trimmed_foot(), at=after(watch, 33))
    trim.recorded_by = house.owner
    trim.save()
    assert look(watch, 40).state == WatchState.TOLD


def test_two_vans_are_watched_each_for_itself(house):
    van = make_van(house.business, house.owner, "Van 2")
    add_contact(house, "O. Other", email="other@home.example", van=van)
    add_contact(house, "M. Mine", email="mine@home.example", van=house.van, turn=3)
    first = watch_of(house)
    farm = make_farm(house.business, "High Croft", by=house.owner)
    second = under_way(farm, van, TUESDAY_TEN).watches.within(house.scope).get()
    for minutes in range(30, 71):
        look(first, minutes)
    assert {call.name for call in calls(first) if not call.is_trimmer} == {
        "N. Neighbour",
        "S. Sister",
        "M. Mine",
    }
    assert again(second).state == WatchState.WATCHING
    for minutes in range(30, 71):
        look(second, minutes)
    assert {call.name for call in calls(second) if not call.is_trimmer} == {
        "N. Neighbour",
        "S. Sister",
        "O. Other",
    }


def test_an_alarm_that_cannot_be_sent_is_followed_by_the_next_at_once(house):
    watch = alarmed(house)
    went(house)
    Outgoing.objects.within(house.scope).filter(address="neighbour@home.example").update(state="failed")
    look(watch, 41)
    assert sent(house)[-1].address == "0199 555 020"
    assert "could not be sent" in log(watch)
    look(watch, 42)
    assert len([call for call in calls(watch) if not call.is_trimmer]) == 2


def test_it_stops_at_some_point_and_says_nothing_more(house):
    watch = alarmed(house)
    LoneWatch.objects.within(house.scope).update(tellings=MOST_TELLINGS)
    assert look(watch, 500).next_at is None


def test_a_program_that_wants_it_is_told_once_and_without_a_name(house):
    WebhookAddress.objects.create(
        business=house.business,
        name="Gate lamp",
        url="https://lamp.example/",
        secret="whsec_x",
        events=["watch.raised"],
        made_at=TUESDAY_TEN,
        made_by=house.owner,
    )
    watch = watch_of(house)
    for minutes in range(30, 80):
        look(watch, minutes)
    (told,) = [outgoing for outgoing in sent(house) if outgoing.channel == "webhook"]
    assert "Low Croft" in told.body
    assert house.trimmer.name not in told.body


def test_where_nobody_is_left_on_the_list_the_log_says_so(house):
    WatchContact.objects.within(house.scope).delete()
    watch = watch_of(house)
    look(watch, 30), look(watch, 40)
    assert "nobody could be told" in log(watch)


def test_where_nothing_can_leave_the_page_alone_asks(house, settings):
    watch = watch_of(house)
    settings.EMAIL_HOST = ""
    look(watch, 30)
    assert not sent(house)
    assert "the page only" in log(watch)


@pytest.mark.parametrize(
    ("change", "how"),
    [
        ({"state": "finished"}, WatchEnd.FINISHED),
        ({"state": "called_off"}, WatchEnd.CALLED_OFF),
        ({"state": "wanted"}, WatchEnd.CALLED_OFF),
    ],
)
def test_a_visit_that_ended_without_a_word_is_found_at_the_next_look(house, change, how):
    watch = watch_of(house)
    Visit.objects.within(house.scope).filter(pk=watch.visit_id).update(**change)
    assert look(watch, 30).ended_how == how
    assert not sent(house)


def test_a_visit_of_the_plan_that_has_another_hour_now_is_not_asked_about(house):
    visit = planned(house.farm, house.van)
    watch = begin_watch(visit=visit, trimmer=house.trimmer, at=TUESDAY_TEN, is_by_plan=True)
    later = TUESDAY_TEN + timedelta(days=1)
    Visit.objects.within(house.scope).filter(pk=visit.pk).update(planned_start=later, planned_finish=None)
    assert look(watch, 30).ended_how == WatchEnd.NOT_THERE


def test_a_watch_that_is_gone_is_no_fault(house):
    assert look_at_watch(watch_id=987_654_321, at=TUESDAY_TEN) is None
