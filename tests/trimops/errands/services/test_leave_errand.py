from datetime import UTC, datetime

import pytest

from tests.factories import make_user
from tests.trimops.errands.errand_hands import now_of, written
from trimops.errands.services.leave_errand import leave_errand
from trimops.errands.services.run_errand import run_errand
from trimops.errands.services.try_again import NotStuck

AT = datetime(2026, 7, 1, 9, tzinfo=UTC)


@pytest.mark.django_db
def test_it_is_over_and_says_who_left_it():
    errand = written(state="stuck", tries=8, last_words="ValueError: no")
    leave_errand(errand=errand, at=AT, by=make_user("An Owner"))
    row = now_of(errand)
    assert (row.state, row.ended_at, row.last_words) == ("done", AT, "Left by An Owner. ValueError: no")
    assert run_errand(errand_id=errand.pk) is None
    with pytest.raises(NotStuck):
        leave_errand(errand=errand, at=AT, by=make_user())
