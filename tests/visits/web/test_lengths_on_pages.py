"""Where a visit's length comes from, and when the van likely comes, stands on the pages in plain words."""

from datetime import datetime, timedelta

import pytest
from django.template.loader import render_to_string
from django.urls import reverse
from django.utils import timezone

from tests.factories import NOON, TUESDAY_TEN, finish, make_farm, make_house, planned, under_way, wanted
from tests.visits.past_visits import make_past
from visits.selectors.day_arrivals import arrivals_of
from visits.services.learn_visit_lengths import learn_visit_lengths

pytestmark = pytest.mark.django_db


@pytest.fixture
def house():
    return make_house()


@pytest.fixture
def read(house, client, monkeypatch):
    client.force_login(house.owner)

    def page(name, *args, now=NOON):
        monkeypatch.setattr(timezone, "now", lambda: now)
        answer = client.get(reverse(name, args=args))
        assert answer.status_code == 200
        return " ".join(
            answer.content.decode().replace("&nbsp;", " ").replace("\N{NO-BREAK SPACE}", " ").split()
        )

    return page


def test_without_history_the_visit_says_that_its_length_is_by_your_own_figures(house, read):
    page = read("visit", wanted(house.farm).pk)
    assert "By your own figures: too few visits are finished to learn from" in page
    assert "four in five last from" in page
    assert "12 cows to trim 84 min" in page


def test_with_history_it_says_from_how_many_visits(house, read):
    make_past(house, house.farm, 20)
    make_past(house, make_farm(house.business, "High Croft", by=house.owner), 10)
    learn_visit_lengths(business=house.business, at=NOON)
    assert "From 20 visits here and 30 in all" in read("visit", wanted(house.farm).pk)
    new = make_farm(house.business, "Mid Croft", by=house.owner)
    assert "No visit here yet; from 30 visits to other farms" in read("visit", wanted(new).pk)


def test_a_planned_visit_says_when_the_van_is_likely_there_and_done_before_milking(house, read):
    page = read("visit", planned(house.farm, house.van).pk)
    assert "<dt>Likely</dt>" in page
    assert "There 09:" in page or "There 10:" in page
    assert "in 100 to be done in time for milking" in page


def test_a_visit_under_way_says_when_it_is_likely_done(house, read):
    visit = under_way(house.farm, house.van)
    page = read("visit", visit.pk, now=TUESDAY_TEN + timedelta(hours=1))
    assert "Begun 10:00, done" in page


def test_a_visit_that_should_have_begun_is_said_not_to_have(house, read):
    page = read("visit", planned(house.farm, house.van).pk, now=TUESDAY_TEN + timedelta(hours=2))
    assert "Not begun yet; done about" in page


def test_a_finished_and_a_wanted_visit_have_no_arrival(house, read):
    visit = finish(under_way(house.farm, house.van), house.trimmer)
    for pk in (visit.pk, wanted(house.farm).pk):
        assert "<dt>Likely</dt>" not in read("visit", pk)


def test_the_day_as_it_runs_says_what_is_done_what_is_to_come_and_that_it_is_late(house):
    first = under_way(house.farm, house.van, TUESDAY_TEN.replace(hour=8), head_count=6)
    there = make_farm(house.business, "High Croft", by=house.owner, latitude="54.15")
    planned(there, house.van, TUESDAY_TEN.replace(hour=10, minute=30))
    done = TUESDAY_TEN.replace(hour=12)
    finish(first, house.trimmer, done)
    arrivals = arrivals_of(house.business, house.van, done.date(), done)
    told = " ".join(render_to_string("visits/_day_arrivals.html", {"arrivals": arrivals}).split())
    assert "08:00 to 12:00" in told
    assert "Running late" in told
    assert "High Croft" in told
    assert "There 12:" in told
    assert "in 100 to be done in time for milking" in told
    assert "Home" in told


def test_a_day_without_visits_draws_nothing():
    assert render_to_string("visits/_day_arrivals.html", {"arrivals": None}).strip() == ""


def test_the_figures_page_says_what_was_learned_or_what_is_wanting(house, read):
    assert "until 15 are finished (0 so far)" in read("figures")
    make_past(house, house.farm, 30)
    learn_visit_lengths(business=house.business, at=datetime(2026, 3, 1, 2, tzinfo=NOON.tzinfo))
    page = read("figures")
    assert "Learned on Sun 1 Mar from 30 finished visits" in page
    assert "A cow, usual trim" in page
