"""Edit against edit where a business has one set of rules, which no address names."""

import pytest

from tests.factories import make_house
from tests.services.races.crowd import Person, crowd, fault_of, one_wins
from visits.models import MessageRules, WatchRules

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
