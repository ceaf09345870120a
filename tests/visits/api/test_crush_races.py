"""Phones that send at the very same moment, each on a database connection of its own."""

from collections import Counter
from datetime import timedelta
from decimal import Decimal
from uuid import uuid4

import pytest
from django.test import Client
from django.utils import timezone

from farms.models import Cow
from tests.factories import JPEG, NOON, make_cow, make_kit, under_way
from tests.many_hands import ManyHands
from tests.visits.api.phone import Phone, blocked, cow_content, foot, post, put_photo
from visits.models import CrushWriting, Recheck, StockMovement, Trim, TrimPhoto
from visits.services.kit.count_stock import count_stock
from visits.services.kit.stock_place import place_of_van
from visits.services.kit.stock_word import Amount, StockWord

pytestmark = pytest.mark.django_db(transaction=True)


@pytest.fixture
def many_hands(transactional_db, tmp_path, monkeypatch):
    return ManyHands(tmp_path, monkeypatch)


def signed_in(user):
    client = Client()
    client.force_login(user)
    return client


@pytest.fixture
def phones(many_hands, house, visit):
    """Two phones, of the trimmer and of the owner."""
    return [Phone(signed_in(user), visit) for user in (house.trimmer, house.owner)]


def told(many_hands, model, scope, *names):
    (rows,) = many_hands(lambda s: list(model.objects.within(s).order_by("pk").values_list(*names)), [scope])
    return rows


def test_the_same_sending_four_times_at_once_is_kept_once(many_hands, house, phones):
    make_kit(house.business)
    cows = [house.cow, *[make_cow(house.farm, str(n)) for n in range(9)]]
    for cow in cows:
        phones[0].write(cow_content(cow.pk, blocked()))
    body = phones[0].body()
    clients = [signed_in(house.trimmer) for _ in range(4)]
    answers = many_hands(lambda client: post(client, phones[0].visit, body).json(), clients)
    outcomes = Counter(answer["outcome"] for told_ in answers for answer in told_["answers"])
    assert outcomes == {"kept": 10, "known": 30}
    assert len(told(many_hands, CrushWriting, house.scope, "uid")) == 10
    assert len(told(many_hands, Trim, house.scope, "cow")) == 10
    glue = told(many_hands, StockMovement, house.scope, "consumable__name", "quantity")
    assert sum(quantity for name, quantity in glue if name == "Glue") == -250


def test_one_cow_on_two_phones_at_once_ends_as_the_later_says_and_both_stay(many_hands, house, phones):
    for note, phone in zip(("first", "second"), phones, strict=True):
        for _ in range(5):
            phone.write(cow_content(house.cow.pk, blocked(), foot("RH"), note=note))
    many_hands(lambda phone: phone.send(), phones)
    rows = told(many_hands, CrushWriting, house.scope, "placed_at", "uid", "content")
    assert len(rows) == 10
    ((note, version),) = told(many_hands, Trim, house.scope, "note", "version")
    assert (note, version) == (max(rows, key=lambda row: row[:2])[2]["entry"]["note"], 10)
    assert told(many_hands, Recheck, house.scope, "foot", "closed_on") == [("LH", None)]
    for phone in phones:
        assert len(many_hands(lambda p: p.send(), [phone])[0]["others"]) in (0, 5)


def test_a_cow_nobody_knew_added_on_two_phones_at_once_is_one_cow(many_hands, house, phones):
    for phone in phones:
        phone.write(cow_content({"uid": phone.uid, "number": "900", "is_another": False}, foot()))
    many_hands(lambda phone: phone.send(), phones)
    numbers = [number for (number,) in told(many_hands, Cow, house.scope, "number")]
    assert numbers.count("900") == 1
    assert len(told(many_hands, Trim, house.scope, "cow")) == 1


def test_photos_and_their_cow_at_once_find_each_other(many_hands, house, phones):
    cow = phones[0].write(cow_content(house.cow.pk, blocked()))
    photos = [phones[0].new_uid() for _ in range(3)]

    def go(what):
        if what is None:
            return phones[0].send()
        return put_photo(phones[1], cow["record"], what, JPEG)

    many_hands(go, [*photos, None])
    assert [trim is not None for (trim,) in told(many_hands, TrimPhoto, house.scope, "trim")] == [True] * 3


def test_two_visits_that_use_up_the_same_stock_at_once_leave_the_count_true(many_hands, house, phones):
    """Cows and words by hand name the things in different orders: nobody waits in a ring."""
    kit, now = make_kit(house.business), timezone.now()
    word = StockWord(at=now, noted_at=now, by=house.owner, uid=uuid4())
    amounts = [Amount(item, Decimal(500)) for item in kit.values()]
    count_stock(place=place_of_van(house.van), counted=amounts, word=word)
    both = [
        phones[0],
        Phone(signed_in(house.owner), under_way(house.farm, house.van, NOON + timedelta(days=3))),
    ]
    bodies = []
    for phone, name in zip(both, ("wrap", "wood"), strict=True):
        for n in range(2):
            cow = make_cow(house.farm, f"{name}{n}")
            extra = {"consumable": kit[name].pk, "extra": "2"}
            hour = timedelta(hours=1)
            words = [
                phone.write(extra, kind="kit", ago=hour),
                phone.write(cow_content(cow.pk, blocked()), ago=hour),
            ]
            bodies.append((phone, phone.body(words)))
    assert many_hands(lambda sent: sent[0].post(sent[1]).status_code, bodies) == [200] * 4
    used, left = Counter(), Counter()
    for name, kind, quantity in told(
        many_hands, StockMovement, house.scope, "consumable__name", "kind", "quantity"
    ):
        left[name] += quantity
        used[name] -= quantity if kind == "used" else 0
    assert used == {"Wooden block": 6, "Glue": 100, "Wrap": 2}
    assert set(left.values()) == {500}
