import pytest

from invoicing.domain.travel_charge import DistanceUnit, TravelRule


@pytest.mark.parametrize("kind", [TravelRule, DistanceUnit])
def test_each_has_words_of_its_own(kind):
    assert len({member.label for member in kind}) == len(kind)
