"""The page on which calendar addresses are made, and the feed as a calendar program asks for it."""

import gzip
from datetime import timedelta

import pytest
from django.test import Client
from django.urls import reverse
from django.utils import timezone

from tests.factories import make_farm, make_house, make_van, planned
from tests.visits.selectors.calendar_read import subscribe
from visits.models import CalendarAddress, Visit


@pytest.fixture
def house(db):
    return make_house()


@pytest.fixture
def feed(house):
    """The address of the whole business's feed, with a visit in it."""
    planned(house.farm, house.van, timezone.now() + timedelta(days=1))
    return reverse("calendar_feed", args=[subscribe(house)])


def office(house):
    client = Client()
    client.force_login(house.office)
    return client


def test_who_has_the_newest_feed_gets_no_byte_and_costs_one_query(feed, django_assert_num_queries):
    whole = Client().get(feed)
    tag = whole.headers["ETag"]
    assert not tag.startswith("W/")
    with django_assert_num_queries(1):
        again = Client().get(feed, headers={"if-none-match": tag})
    assert (again.status_code, again.content, again.headers["ETag"]) == (304, b"", tag)
    for name in ("Cache-Control", "Vary"):
        assert again.headers[name] == whole.headers[name]


def test_the_whole_feed_is_one_query_too(feed, django_assert_num_queries):
    with django_assert_num_queries(1):
        assert Client().get(feed).status_code == 200


@pytest.mark.parametrize(
    ("asked", "answer"),
    [
        ("{}", 304), ('"old", {}', 304), ('W/"old" , W/{}', 304), ("*", 304),
        ('"old"', 200), ("", 200), ("nonsense", 200), ('W/"old"', 200),
    ],
)  # fmt: skip
def test_tags_are_compared_as_rfc_9110_has_it(feed, asked, answer):
    tag = Client().get(feed).headers["ETag"]
    headers = {"if-none-match": asked.format(tag)} if asked else {}
    assert Client().get(feed, headers=headers).status_code == answer


def test_a_change_is_told_to_who_had_the_feed_before_it(house, feed):
    tag = Client().get(feed).headers["ETag"]
    Visit.objects.within(house.scope).update(head_count=77)
    answer = Client().get(feed, headers={"if-none-match": tag})
    assert answer.status_code == 200
    assert b"77 cows" in answer.content


def test_a_date_alone_is_too_coarse_to_hold_the_feed_back(feed):
    modified = Client().get(feed).headers["Last-Modified"]
    assert Client().get(feed, headers={"if-modified-since": modified}).status_code == 200


def test_head_says_what_get_would_say_without_the_feed(feed):
    whole, head = Client().get(feed), Client().head(feed)
    assert head.content == b""
    for name in ("ETag", "Last-Modified", "Content-Type", "Content-Length", "Cache-Control"):
        assert head.headers.get(name) == whole.headers.get(name), name


def test_a_packed_feed_unpacks_to_the_same_bytes_and_its_tag_is_known_again(feed):
    plain = Client().get(feed)
    packed = Client().get(feed, headers={"accept-encoding": "gzip"})
    assert packed.headers["Content-Encoding"] == "gzip"
    assert gzip.decompress(packed.content) == plain.content
    assert packed.headers["ETag"] == f"W/{plain.headers['ETag']}"
    again = Client().get(feed, headers={"accept-encoding": "gzip", "if-none-match": packed.headers["ETag"]})
    assert (again.status_code, again.content) == (304, b"")


@pytest.mark.parametrize("method", ["post", "put", "delete", "patch"])
def test_nobody_writes_through_a_feed(feed, method):
    assert getattr(Client(), method)(feed).status_code == 405


def test_an_address_is_made_for_each_kind_of_reader(house):
    client = office(house)
    kinds = {"all": None, f"van-{house.van.pk}": "van", f"farm-{house.farm.pk}": "farm",
             f"trimmer-{house.trimmer.pk}": "trimmer"}  # fmt: skip
    for shows, column in kinds.items():
        made = client.post(reverse("calendar"), {"name": "Phone", "shows": shows, "alarm_minutes": "60"})
        assert made.status_code == 200
        assert "no-store" in made.headers["Cache-Control"]
        row = CalendarAddress.objects.within(house.scope).latest("pk")
        assert row.alarm_minutes == 60
        assert [name for name in ("van", "farm", "trimmer") if getattr(row, name)] == (
            [column] if column else []
        )
        assert Client().get(made.context["new_address"]).status_code == 200


def test_nothing_of_another_business_can_be_chosen(house):
    theirs = make_house("Fell & Beck")
    for shows in (f"van-{theirs.van.pk}", f"farm-{theirs.farm.pk}", f"trimmer-{theirs.trimmer.pk}"):
        answer = office(house).post(reverse("calendar"), {"name": "Phone", "shows": shows})
        assert answer.status_code == 400
        assert "shows" in answer.context["form"].errors
    assert not CalendarAddress.objects.within(house.scope).exists()


def test_a_trimmer_finds_himself_chosen_and_who_drives_nothing_the_business(house):
    client = Client()
    client.force_login(house.trimmer)
    make_farm(house.business, "Hill End", by=house.owner)
    make_van(house.business, house.trimmer, "Van 2")
    form = client.get(reverse("calendar")).context["form"]
    assert form["shows"].initial == f"trimmer-{house.trimmer.pk}"
    assert office(house).get(reverse("calendar")).context["form"]["shows"].initial == "all"
