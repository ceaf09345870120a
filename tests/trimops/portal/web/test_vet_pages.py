"""The vet's desk: only what the pass shows, only of its farm, only until it ends."""

from dataclasses import replace
from datetime import timedelta

import pytest
from django.db import connection, transaction
from django.test import Client
from django.test.utils import CaptureQueriesContext
from django.urls import reverse
from django.utils import timezone

from farms.models import VetPass
from farms.services.close_vet_pass import close_vet_pass
from farms.services.give_vet_pass import SHOWS, VetWord, give_vet_pass
from tests.factories import (
    blocked_foot,
    finish,
    make_cow,
    make_farm,
    make_house,
    photo_of,
    put_down,
    under_way,
)
from visits.services.issue_letter import issue_letter
from visits.services.issue_report import issue_first_report

ALL = VetWord("A. Vet", "", SHOWS, 30)
NEEDS = {
    "vet_report": "shows_reports",
    "vet_letter": "shows_letters",
    "vet_cow": "shows_cows",
    "vet_photo": "shows_photos",
    "vet_herd": "shows_figures",
}


@pytest.fixture(scope="module")
def made(django_db_setup, django_db_blocker):
    """A house with work on two farms of its own and one of another business; the keys of each."""
    with django_db_blocker.unblock(), transaction.atomic():
        house, other = make_house(), make_house("Fell & Beck")
        second = make_farm(house.business, "High Croft", by=house.owner)
        yield house, work_on(house.farm, house), work_on(second, house), work_on(other.farm, other)
        transaction.set_rollback(True)


def work_on(farm, house):
    now = timezone.now()
    cow = make_cow(farm, f"77{farm.pk}")
    visit = under_way(farm, house.van, now - timedelta(days=3 + farm.pk % 50))
    trim = put_down(visit, cow, blocked_foot(for_vet="hot above the horn"))
    photo = photo_of(trim)
    finish(visit, house.trimmer)
    issue_first_report(visit=visit, at=now)
    issue_letter(trim=trim, at=now, by=house.trimmer)
    return {
        "vet_report": visit.pk,
        "vet_letter": trim.pk,
        "vet_cow": cow.pk,
        "vet_photo": photo.uid,
    }


@pytest.fixture
def house(made, db):
    return made[0]


def give(house, word=ALL):
    return give_vet_pass(farm=house.farm, word=word, at=timezone.now(), by=house.owner)


def opened(secret, name="vet_desk", key=None, query=""):
    return Client().get(reverse(name, args=[secret, *([key] if key else [])]) + query)


@pytest.mark.parametrize("name", NEEDS)
def test_a_part_opens_if_the_pass_shows_it_and_to_the_rows_of_its_farm_alone(name, made, house):
    mine, beside, foreign = made[1:]
    secret = give(house).secret
    keys = [ring.get(name) for ring in (mine, beside, foreign)]
    assert opened(secret, name, keys[0]).status_code == 200
    if keys[0]:
        assert [opened(secret, name, key).status_code for key in keys[1:]] == [404, 404]
    rest = [show for show in SHOWS if show != NEEDS[name]]
    assert opened(give(house, replace(ALL, shows=rest)).secret, name, keys[0]).status_code == 404


def test_the_desk_names_only_what_the_pass_shows(house):
    everything = opened(give(house).secret).content.decode()
    assert "hot above the horn" in everything
    assert "Reports of visits" in everything
    assert "High Croft" not in everything
    only_reports = opened(give(house, replace(ALL, shows=["shows_reports"])).secret).content.decode()
    assert "Reports of visits" in only_reports
    for hidden in ("hot above the horn", "One cow", "Feet over time"):
        assert hidden not in only_reports


def test_a_cow_is_found_by_her_number_and_only_if_cows_are_shown(made, house):
    number = f"77{house.farm.pk}"
    found = reverse("vet_cow", args=[(secret := give(house).secret), made[1]["vet_cow"]])
    assert found in opened(secret, query=f"?q={number}").content.decode()
    closed = give(house, replace(ALL, shows=["shows_letters"])).secret
    assert "/cows/" not in opened(closed, query=f"?q={number}").content.decode()


def test_photos_stand_on_a_cows_page_only_if_they_are_shown(made, house):
    with_photos = opened(give(house).secret, "vet_cow", made[1]["vet_cow"]).content.decode()
    assert "/photos/" in with_photos
    rest = replace(ALL, shows=["shows_cows"])
    assert "/photos/" not in opened(give(house, rest).secret, "vet_cow", made[1]["vet_cow"]).content.decode()


@pytest.mark.parametrize("name", ["vet_desk", *NEEDS])
def test_an_ended_a_closed_and_an_unknown_link_say_the_same(name, made, house):
    key = made[1].get(name)
    long_ago = timezone.now() - timedelta(days=40)
    ended = give_vet_pass(farm=house.farm, word=ALL, at=long_ago, by=house.owner).secret
    shut = give(house)
    close_vet_pass(vet_pass=shut.row, at=timezone.now())
    answers = [opened(secret, name, key) for secret in (ended, shut.secret, "no-such-secret")]
    assert {answer.status_code for answer in answers} == {404}
    assert len({answer.content for answer in answers}) == 1
    assert "Ask the farm for a new one" in answers[0].content.decode()


@pytest.mark.parametrize("name", ["vet_desk", *NEEDS])
def test_nothing_of_it_is_kept_handed_on_or_found(name, made, house):
    for secret in (give(house).secret, "no-such-secret"):
        answer = opened(secret, name, made[1].get(name))
        assert "no-store" in answer["Cache-Control"]
        assert answer["Referrer-Policy"] == "no-referrer"
        assert "noindex" in answer["X-Robots-Tag"]


def test_more_cows_for_the_vet_take_no_more_queries(house):
    def queries():
        with CaptureQueriesContext(connection) as asked:
            assert opened(secret, query="?q=7").status_code == 200
        return len(asked)

    secret = give(house).secret
    opened(secret)
    few = queries()
    visit = under_way(house.farm, house.van, timezone.now() - timedelta(days=1))
    for number in range(5):
        put_down(visit, make_cow(house.farm, f"7{number}"), blocked_foot(for_vet="hot"))
    assert queries() == few


def test_the_farm_sees_when_its_vet_looked(house):
    made = give(house)
    opened(made.secret)
    row = VetPass.objects.within(house.scope).get(pk=made.row.pk)
    assert timezone.now() - row.opened_at < timedelta(minutes=1)


def test_what_no_database_takes_finds_no_cow_and_a_farm_no_longer_served_shows_nothing(house):
    made = give(house)
    assert opened(made.secret, query="?q=%00").status_code == 200
    house.farm.is_active = False
    house.farm.save()
    assert opened(made.secret).status_code == 404
    house.farm.is_active = True
