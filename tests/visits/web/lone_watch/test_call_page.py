"""What somebody sees and says by the link, without signing in."""

from datetime import timedelta

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from tests.visits.services.lone_watch.watched import again, alarmed, calls, sent, went
from visits.domain.lone_watch.watch_states import WatchState
from visits.models import LoneWatch
from visits.services.lone_watch.try_watch import try_watch


@pytest.fixture
def watch(house):
    return alarmed(house)


def link_of(house, address):
    """As it stands in the newest message to that address."""
    message = [outgoing for outgoing in sent(house) if outgoing.address == address][-1]
    return reverse("watch_by_link", args=[message.secret])


def words(answer):
    return " ".join(answer.content.decode().split())


def test_the_link_in_the_mail_is_the_one_that_opens(house, watch):
    mail = next(outgoing for outgoing in sent(house) if outgoing.address == "neighbour@home.example")
    assert reverse("watch_by_link", args=[mail.secret]) in mail.body.replace("{secret}", mail.secret)


def test_who_is_told_sees_what_to_do_and_where_without_signing_in(house, watch):
    page = Client().get(link_of(house, "neighbour@home.example"))
    for part in (
        "did not check in: please look",
        "geo:54.100000,-2.300000",
        "tel:0199 555 010",
        "999",
        "Low Croft",
    ):
        assert part in words(page), part
    assert page["Cache-Control"] == "private, no-store"
    assert page["Referrer-Policy"] == "no-referrer"


def test_opening_a_link_answers_nothing(house, watch):
    for address in ("neighbour@home.example", house.trimmer.email):
        Client().get(link_of(house, address))
    assert again(watch).state == WatchState.TOLD
    assert not any(call.answer for call in calls(watch))


def test_i_see_to_it_is_seen_by_the_others(house, watch):
    link = link_of(house, "neighbour@home.example")
    page = Client().post(link, {"answer": "takes"}, follow=True)
    assert "N. Neighbour said at" in words(page)
    assert again(watch).taken_by == "N. Neighbour"


def test_the_trimmer_answers_by_the_link(house, watch):
    link = link_of(house, house.trimmer.email)
    assert "are you well?" in words(Client().get(link))
    assert "the watch is over" in words(Client().post(link, {"answer": "well_done"}, follow=True))
    assert again(watch).is_over


@pytest.mark.parametrize(("address", "answer", "status"), [
    ("neighbour@home.example", "well_done", 409),
    ("neighbour@home.example", "nonsense", 400),
    ("neighbour@home.example", "", 400),
])  # fmt: skip
def test_what_the_link_cannot_say_is_refused(house, watch, address, answer, status):
    assert Client().post(link_of(house, address), {"answer": answer}).status_code == status
    assert again(watch).state == WatchState.TOLD


def test_after_the_end_it_says_that_all_is_well_and_later_nothing(house, watch):
    link = link_of(house, "neighbour@home.example")
    went(house)
    Client().post(link, {"answer": "found"})
    page = words(Client().get(link))
    assert "All is well with" in page
    assert "Down the track" not in page, "where somebody worked is nobody's business any more"
    LoneWatch.objects.within(house.scope).update(ended_at=timezone.now() - timedelta(days=3))
    assert Client().get(link).status_code == 404


def test_a_link_that_never_was_is_answered_as_one_that_ended(watch):
    assert Client().get(reverse("watch_by_link", args=["x" * 43])).status_code == 404


def test_a_test_is_confirmed_and_shows_no_farm(house):
    test = try_watch(business=house.business, at=timezone.now(), by=house.owner)
    link = link_of(house, "neighbour@home.example")
    page = words(Client().get(link))
    assert "This is a test: nobody is missing" in page
    assert "Low Croft" not in page
    assert "Thank you" in words(Client().post(link, {"answer": "takes"}, follow=True))
    assert calls(test)[0].answered_at is not None
