"""Edit against edit: of two who change the same version of a row one wins, the other hears that it is another now."""

import pytest
from django.urls import reverse

from farms.models import Contact, Cow, Farm, Payer
from tests.factories import make_cow, make_farm
from tests.services.races.crowd import LOOKS, ROUNDS, Person, crowd, fault_of, form_of, one_wins
from trimops.accounts.roles import Role

pytestmark = pytest.mark.services


def etag(person, address):
    return person.client.get(f"/api/v1{address}")["ETag"]


def edited(told):
    return one_wins(told, "stale", LOOKS)


def test_of_four_who_change_one_version_of_a_farm_one_wins(house, people):
    farms = [make_farm(house.business, f"Farm {n}", by=house.owner) for n in range(ROUNDS)]

    def hands(farm):
        at, page = f"/farms/{farm.pk}/", reverse("farm_edit", args=[farm.pk])
        tag = etag(people[Role.OWNER], at)
        return [
            Person(house.owner).api("PATCH", at, {"herd_size": 201}, If_Match=tag),
            Person(house.office).api("PATCH", at, {"herd_size": 202}, If_Match=tag),
            people[Role.TRIMMER].page(page, **form_of(people[Role.TRIMMER], page, herd_size=203)),
            people[Role.OFFICE].page(page, **form_of(people[Role.OFFICE], page, herd_size=204)),
        ]

    told = crowd([hands(farm) for farm in farms])
    assert fault_of(told) == []
    for answers, farm in zip(told, farms, strict=True):
        won = answers.index(edited(answers))
        assert Farm.objects.within(house.scope).get(pk=farm.pk).herd_size == 201 + won


def test_of_four_who_change_one_version_of_a_cow_one_wins(house, people):
    cows = [make_cow(house.farm, f"9{n}") for n in range(ROUNDS)]

    def hands(cow):
        at, page = f"/cows/{cow.pk}/", reverse("cow_edit", args=[cow.farm_id, cow.pk])
        tag = etag(people[Role.OWNER], at)
        return [
            Person(house.owner).api("PATCH", at, {"note": "0"}, If_Match=tag),
            Person(house.trimmer).api("PATCH", at, {"note": "1"}, If_Match=tag),
            people[Role.TRIMMER].page(page, **form_of(people[Role.TRIMMER], page, note="2")),
            people[Role.OFFICE].page(page, **form_of(people[Role.OFFICE], page, note="3")),
        ]

    told = crowd([hands(cow) for cow in cows])
    assert fault_of(told) == []
    for answers, cow in zip(told, cows, strict=True):
        won = answers.index(edited(answers))
        assert Cow.objects.within(house.scope).get(pk=cow.pk).note == str(won)


def test_of_four_who_change_one_version_of_a_payer_one_wins(house, people):
    payers = [Payer.objects.create(business=house.business, name=f"Payer {n}") for n in range(ROUNDS)]

    def hands(payer):
        at, page = f"/payers/{payer.pk}/", reverse("payer", args=[payer.pk])
        tag = etag(people[Role.OWNER], at)
        return [
            Person(house.owner).api("PATCH", at, {"payment_days": 10}, If_Match=tag),
            Person(house.office).api("PATCH", at, {"payment_days": 11}, If_Match=tag),
            people[Role.OWNER].page(page, **form_of(people[Role.OWNER], page, payment_days=12)),
            people[Role.OFFICE].page(page, **form_of(people[Role.OFFICE], page, payment_days=13)),
        ]

    told = crowd([hands(payer) for payer in payers])
    assert fault_of(told) == []
    for answers, payer in zip(told, payers, strict=True):
        won = answers.index(edited(answers))
        assert Payer.objects.within(house.scope).get(pk=payer.pk).payment_days == 10 + won


def test_a_call_sent_four_times_at_once_under_one_key_is_done_once_and_answered_alike(house):
    persons = [Person(house.office) for _ in range(4)]
    word = {"latitude": "54.100000", "longitude": "-2.300000"}

    def hands(number):
        sent = {**word, "name": f"Twice {number}"}
        return [person.api("POST", "/farms/", sent, Idempotency_Key=f"key-{number}") for person in persons]

    told = crowd([hands(number) for number in range(ROUNDS)])
    assert fault_of(told) == []
    for answers in told:
        assert {(each.status, each.body) for each in answers} == {(201, answers[0].body)}
    assert Farm.objects.within(house.scope).filter(name__startswith="Twice").count() == ROUNDS


def test_one_key_for_different_things_at_once_does_one_of_them(house):
    persons = [Person(house.office) for _ in range(4)]
    word = {"latitude": "54.100000", "longitude": "-2.300000"}

    def hands(number):
        return [
            person.api("POST", "/farms/", {**word, "name": f"{number} of {n}"}, Idempotency_Key=f"k-{number}")
            for n, person in enumerate(persons)
        ]

    told = crowd([hands(number) for number in range(ROUNDS)])
    assert fault_of(told) == []
    for answers in told:
        assert one_wins(answers, "idempotency_key_reused").status == 201
    assert Farm.objects.within(house.scope).filter(name__contains=" of ").count() == ROUNDS


def test_two_farms_of_one_name_at_once_become_one_and_the_other_hears_why(house, people):
    word = {"latitude": "54.100000", "longitude": "-2.300000"}

    def hands(number):
        sent = {**word, "name": f"Same {number}"}
        return [
            people[Role.OFFICE].api("POST", "/farms/", sent, Idempotency_Key=f"office-{number}"),
            people[Role.OWNER].api("POST", "/farms/", sent, Idempotency_Key=f"owner-{number}"),
            people[Role.TRIMMER].api("POST", "/farms/", sent, Idempotency_Key=f"trimmer-{number}"),
        ]

    told = crowd([hands(number) for number in range(ROUNDS)])
    assert fault_of(told) == []
    for answers in told:
        assert sorted(each.status for each in answers) == [201, 422, 422], [each[:2] for each in answers]
    assert Farm.objects.within(house.scope).filter(name__startswith="Same").count() == ROUNDS


def test_a_person_of_a_farm_is_taken_off_the_list_once(house, people):
    words = {"business": house.business, "farm": house.farm, "part": "Milker"}
    rows = [Contact.objects.create(name=f"Person {n}", **words) for n in range(ROUNDS)]

    def hands(row):
        at = f"/contacts/{row.pk}/"
        tag = etag(people[Role.OWNER], at)
        return [
            Person(house.owner).api("DELETE", at, If_Match=tag),
            Person(house.office).api("DELETE", at, If_Match=tag),
            Person(house.trimmer).api("PATCH", at, {"name": "Somebody"}, If_Match="*"),
            Person(house.owner).page(reverse("contacts", args=[house.farm.pk]), leaves=row.pk),
        ]

    told = crowd([hands(row) for row in rows])
    assert fault_of(told) == []
    for answers in told:
        assert {each.status for each in answers} <= {200, 204, 302, 404, 412}, [each[:2] for each in answers]
        assert any(each.status in (204, 302) for each in answers)
    assert not Contact.objects.within(house.scope).exists()
