from datetime import UTC, datetime, timedelta

import pytest

from tests.factories import make_business
from tests.trimops.errands.errand_hands import written
from trimops.errands.models import Errand
from trimops.errands.selectors.stuck_errands import stuck_rows, told
from trimops.jobs import Job
from trimops.kernel.scope import Scope

AT = datetime(2026, 7, 1, 9, tzinfo=UTC)


@pytest.mark.django_db
def test_the_newest_stand_first_in_words_and_no_other_business_is_seen():
    business = make_business()
    written(business, state="stuck", ended_at=AT, tries=1, last_words="There is no price.")
    written(business, job=Job.PLAN_WEEK, state="stuck", ended_at=AT + timedelta(hours=1), is_fault=True)
    written(business, state="waiting")
    written(make_business("Elm & Oak"), state="stuck", ended_at=AT)
    rows = list(told(stuck_rows(Scope(business.pk))))
    assert [(row.what, row.words, row.is_fault, row.at) for row in rows] == [
        ("Plan a week", "", True, AT + timedelta(hours=1)),
        ("Draft the invoice of a visit", "There is no price.", False, AT),
    ]


@pytest.mark.django_db
def test_a_job_that_is_no_more_bears_its_own_name():
    errand = written(state="stuck", ended_at=AT)
    Errand.objects.within(errand.scope).update(job="visits.of_yesterday")
    (row,) = told(stuck_rows(errand.scope))
    assert row.what == "visits.of_yesterday"
