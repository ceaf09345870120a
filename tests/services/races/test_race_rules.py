"""Edit against edit where a business has one set of rules, which no address names."""

import pytest
from django.urls import reverse

from tests.factories import make_house, make_member
from tests.services.races.crowd import LOOKS, Person, crowd, fault_of, form_of, one_wins
from trimops.accounts.roles import Role
from visits.domain.messages.message_kinds import MessageKind
from visits.models import MessageRules, MessageText, WatchRules

pytestmark = pytest.mark.services
ROUNDS = 5


@pytest.mark.parametrize(
    ("address", "field", "model"),
    [("/message-rules/", "late_minutes", MessageRules), ("/watch-rules/", "grace_minutes", WatchRules)],
)
def test_of_four_who_change_one_version_one_wins(transactional_db, address, field, model):
    houses = [make_house(f"House {number}") for number in range(ROUNDS)]

    def hands(house):
        owner = Person(house.owner)
        owner.api("PATCH", address, {field: 20}, If_Match="*")()
        tag = owner.client.get(f"/api/v1{address}")["ETag"]
        minutes = (21, 22, 23, 24)
        return [Person(house.owner).api("PATCH", address, {field: each}, If_Match=tag) for each in minutes]

    told = crowd([hands(house) for house in houses])
    assert fault_of(told) == []
    for answers, house in zip(told, houses, strict=True):
        won = answers.index(one_wins(answers, "stale"))
        assert getattr(model.objects.within(house.scope).get(), field) == 21 + won


@pytest.mark.parametrize(
    ("page", "field", "model"),
    [("messages", "late_minutes", MessageRules), ("watch", "grace_minutes", WatchRules)],
)
def test_of_four_who_press_keep_on_one_page_of_rules_one_wins(transactional_db, page, field, model):
    houses = [make_house(f"House {number}") for number in range(ROUNDS)]

    def hands(house):
        people, address = [Person(house.owner) for _ in range(4)], reverse(page)
        people[0].page(address, **form_of(people[0], address, **{field: 20}))()
        return [
            person.page(address, **form_of(person, address, **{field: 21 + n}))
            for n, person in enumerate(people)
        ]

    for answers, house in _one_each(houses, hands):
        won = answers.index(one_wins(answers, LOOKS))
        assert getattr(model.objects.within(house.scope).get(), field) == 21 + won


def test_of_four_who_write_one_text_one_wins(transactional_db):
    houses = [make_house(f"House {number}") for number in range(ROUNDS)]
    address = reverse("message", args=[MessageKind.TOMORROW.value])

    def hands(house):
        people = [Person(house.owner) for _ in range(4)]
        people[0].page(address, **form_of(people[0], address, subject="As it was"))()
        return [
            person.page(address, **form_of(person, address, subject=f"Text {n}"))
            for n, person in enumerate(people)
        ]

    for answers, house in _one_each(houses, hands):
        won = answers.index(one_wins(answers, LOOKS))
        assert MessageText.objects.within(house.scope).get().subject == f"Text {won}"


def test_of_two_owners_who_give_somebody_another_part_one_wins(transactional_db):
    houses = [make_house(f"House {number}") for number in range(ROUNDS)]
    roles = [Role.OWNER, Role.TRIMMER]

    def hands(house):
        address = reverse("part", args=[house.memberships[Role.OFFICE].pk])
        people = [Person(house.owner), Person(make_member(house.business, Role.OWNER).user)]
        return [
            person.page(address, **form_of(person, address, role=role.value))
            for person, role in zip(people, roles, strict=True)
        ]

    for answers, house in _one_each(houses, hands):
        won = answers.index(one_wins(answers, LOOKS))
        house.memberships[Role.OFFICE].refresh_from_db()
        assert house.memberships[Role.OFFICE].role == roles[won]


def test_of_two_phones_that_keep_ones_own_ways_one_wins(transactional_db):
    houses = [make_house(f"House {number}") for number in range(ROUNDS)]

    def hands(house):
        people, address = [Person(house.owner) for _ in range(4)], reverse("own_ways")
        return [
            person.page(address, **form_of(person, address, phone=f"0{n}")) for n, person in enumerate(people)
        ]

    for answers, house in _one_each(houses, hands):
        won = answers.index(one_wins(answers, LOOKS))
        house.memberships[Role.OWNER].refresh_from_db()
        assert house.memberships[Role.OWNER].phone == f"0{won}"


def _one_each(houses, hands):
    told = crowd([hands(house) for house in houses])
    assert fault_of(told) == []
    return zip(told, houses, strict=True)
