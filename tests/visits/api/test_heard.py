"""The phone at the crush says that it has a network, is asked, and answers."""

from datetime import timedelta

import pytest
from django.urls import reverse
from django.utils import timezone

from tests.factories import make_farm, under_way
from tests.visits.services.lone_watch.watched import (
    again,
    alarmed,
    can_tell,
    house_of_a_file,
    log,
    look,
    watch_of,
)
from visits.domain.lone_watch.watch_states import WatchState


@pytest.fixture(scope="module")
def furnished(django_db_setup, django_db_blocker):
    with house_of_a_file(django_db_blocker) as house:
        yield house


@pytest.fixture
def house(furnished, db, settings):
    can_tell(settings)
    return furnished


@pytest.fixture
def say(house, signed_in):
    client = signed_in(house.trimmer)

    def say(visit, **words):
        return client.post(reverse("visit_heard", args=[visit.pk]), words, content_type="application/json")

    return say


def test_a_beat_is_kept_and_told_how_it_stands(house, say):
    watch = watch_of(house)
    answer = say(watch.visit)
    assert answer.json() == {
        "watch": {"state": "watching", "farm": "Low Croft", "asked_at": None, "answer_until": None}
    }
    assert timezone.now() - again(watch).last_heard_at < timedelta(minutes=1)


def test_where_nobody_is_watched_it_says_so(house, say):
    visit = watch_of(house).visit
    say(visit, well="done")
    assert say(visit).json() == {"watch": None}


def test_the_phone_is_asked(house, say):
    watch = watch_of(house)
    asked = look(watch, 30)
    told = say(watch.visit).json()["watch"]
    assert told["state"] == "asked"
    assert told["answer_until"] == asked.answer_until.isoformat()


def test_one_tap_answers(house, say):
    watch = alarmed(house)
    assert say(watch.visit, well="more").json()["watch"]["state"] == "watching"
    assert again(watch).state == WatchState.WATCHING


def test_a_tap_without_a_network_counts_from_when_it_was_made(house, say):
    watch = watch_of(house)
    before = timezone.now()
    say(watch.visit, well="more", ago=1200)
    minutes = (again(watch).well_until - before).total_seconds() / 60
    assert 9.5 < minutes < 10.5


def test_a_tap_from_before_the_question_answers_nothing(house, say):
    watch = watch_of(house)
    row = look(watch, 30)
    row.asked_at = timezone.now() - timedelta(minutes=5)
    row.save()
    told = say(watch.visit, well="more", ago=1200).json()["watch"]
    assert told["state"] == "asked"
    assert "before the question" in log(watch)


def test_at_the_next_farm_the_watch_of_the_last_one_asks_and_is_answered(house, say):
    """Somebody forgot the sign-off and drove on."""
    watch = watch_of(house)
    look(watch, 30)
    farm = make_farm(house.business, "High Croft", by=house.owner)
    here = under_way(farm, house.van, watch.began_at + timedelta(hours=5))
    assert say(here).json()["watch"]["farm"] == "Low Croft"
    say(here, well="done")
    assert again(watch).is_over
    assert say(here).json()["watch"]["farm"] == "High Croft"


@pytest.mark.parametrize(
    ("words", "field"),
    [
        ({"well": "yes"}, "well"),
        ({"well": ["more"]}, "well"),
        ({"ago": -1}, "ago"),
        ({"ago": 1e9}, "ago"),
        ({"ago": True}, "ago"),
        ({"ago": "soon"}, "ago"),
        ({"ago": float("nan")}, "ago"),
    ],
)
def test_what_cannot_be_read_is_refused_by_field(house, say, words, field):
    answer = say(watch_of(house).visit, **words)
    assert answer.status_code == 400
    assert answer.json().get("faults", [{"field": field}])[0]["field"] == field


@pytest.mark.parametrize("body", ["", "[]", "3", '"x"', "{"])
def test_any_body_is_answered(house, signed_in, body):
    visit = watch_of(house).visit
    answer = signed_in(house.trimmer).post(
        reverse("visit_heard", args=[visit.pk]), body, content_type="application/json"
    )
    assert answer.status_code in (200, 400)
