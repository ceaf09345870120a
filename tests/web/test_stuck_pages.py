"""The owner sees what got stuck, and has it tried again or leaves it."""

import pytest
from django.test import Client
from django.urls import reverse

from tests.factories import make_house
from tests.trimops.errands.errand_hands import now_of, set_work, written


@pytest.fixture
def house(transactional_db):
    return make_house()


@pytest.fixture
def owner(house):
    client = Client()
    client.force_login(house.owner)
    return client


def test_a_refusal_is_told_in_its_own_words_and_a_fault_as_one(house, owner):
    written(
        house.business,
        state="stuck",
        tries=1,
        last_words="There is no price: write one.",
        ids={"visit_id": 7},
    )
    written(house.business, state="stuck", tries=8, last_words="ValueError: no", is_fault=True)
    page = owner.get(reverse("stuck")).content.decode()
    assert "2 things got stuck" in page
    assert "There is no price: write one." in page
    assert reverse("visit", args=[7]) in page
    assert "Show this to whoever runs the site: ValueError: no" in page


def test_tried_again_it_is_done_and_gone_from_the_page(house, owner, monkeypatch):
    calls = set_work(monkeypatch, lambda time: None)
    errand = written(house.business, state="stuck", tries=8)
    answer = owner.post(reverse("stuck_again", args=[errand.pk]), follow=True)
    assert (now_of(errand).state, len(calls)) == ("done", 1)
    assert "Nothing got stuck" in answer.content.decode()
    assert owner.post(reverse("stuck_again", args=[errand.pk])).status_code == 409


def test_left_it_is_over_and_the_week_says_nothing_of_it_any_more(house, owner):
    errand = written(house.business, state="stuck", tries=8)
    assert "1 thing could not be done" in owner.get(reverse("this_week")).content.decode()
    owner.post(reverse("stuck_leave", args=[errand.pk]))
    assert now_of(errand).state == "done"
    assert "could not be done" not in owner.get(reverse("this_week")).content.decode()


def test_the_week_of_a_trimmer_says_nothing_of_what_only_the_owner_can_mend(house):
    written(house.business, state="stuck", tries=8)
    client = Client()
    client.force_login(house.trimmer)
    assert "could not be done" not in client.get(reverse("this_week")).content.decode()
