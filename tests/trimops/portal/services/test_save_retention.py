import pytest
from django.core.exceptions import ValidationError

from tests.factories import NOON
from trimops.portal.models import RetentionRules
from trimops.portal.services.save_retention import save_retention


def save(house, **periods):
    return save_retention(business=house.business, periods=periods, at=NOON, by=house.owner)


def test_there_is_one_set_of_periods_for_each_business(house):
    save(house, photos_months=24)
    save(house, messages_months=6)
    rules = RetentionRules.objects.within(house.scope).get()
    assert (rules.photos_months, rules.messages_months, rules.changed_by) == (24, 6, house.owner)


@pytest.mark.parametrize(
    "periods",
    [
        {"photos_months": 1},
        {"books_years": 0},
        {"books_years": 10, "bank_files_months": 119},
        {"books_years": 11, "bank_files_months": 132},
        {"trail_years": 2},
        {"errands_days": 9_999},
    ],
)
def test_a_period_below_its_least_is_refused_and_nothing_is_kept(house, periods):
    with pytest.raises(ValidationError) as fault:
        save(house, **periods)
    assert set(fault.value.message_dict) <= {"bank_files_months", "trail_years", *periods}
    assert not RetentionRules.objects.within(house.scope).exists()
