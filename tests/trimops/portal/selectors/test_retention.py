from datetime import UTC, datetime

import pytest

from tests.factories import make_house
from trimops.portal.selectors.retention import books_kept_until, months_before, retention_of


@pytest.mark.parametrize(
    ("at", "months", "before"),
    [
        ("2026-07-01T02:00", 1, "2026-06-01T02:00"),
        ("2026-01-15T02:00", 1, "2025-12-15T02:00"),
        ("2026-03-31T02:00", 1, "2026-02-28T02:00"),
        ("2028-02-29T02:00", 12, "2027-02-28T02:00"),
        ("2026-12-05T02:00", 120, "2016-12-05T02:00"),
    ],
)
def test_so_many_months_ago_or_a_little_longer(at, months, before):
    when = datetime.fromisoformat(at).replace(tzinfo=UTC)
    assert months_before(when, months) == datetime.fromisoformat(before).replace(tzinfo=UTC)


@pytest.mark.django_db
def test_without_a_word_of_the_owner_the_usual_periods_hold():
    house = make_house()
    rules = retention_of(house.scope)
    assert (rules.pk, rules.books_years, rules.photos_months) == (None, 7, 60)
    rules.full_clean(exclude=["changed_at", "changed_by"])
    assert books_kept_until(house.business, rules, datetime(2026, 12, 31, 23, 59, tzinfo=UTC)) == 2033
