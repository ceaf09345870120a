import pytest

from tests.factories import make_house, wanted
from tests.trimops.errands.errand_hands import now_of, written
from trimops.errands.kinds import Gone
from trimops.errands.row_of import row_of
from trimops.errands.services.run_errand import run_errand
from trimops.jobs import Job
from visits.models import Visit


@pytest.mark.django_db
def test_the_row_is_found_whatever_business_it_is(django_assert_num_queries):
    visit = wanted(make_house().farm)
    with django_assert_num_queries(1):
        assert row_of(Visit, visit.pk, "farm__business").farm.business.pk == visit.business_id


@pytest.mark.django_db
def test_what_was_erased_since_is_gone():
    with pytest.raises(Gone, match="Visit 987654"):
        row_of(Visit, 987654)


@pytest.mark.django_db(transaction=True)
def test_an_errand_about_something_erased_is_done_and_says_so():
    errand = written(job=Job.BOOK_RECHECKS, ids={"visit_id": 987654})
    run_errand(errand_id=errand.pk)
    assert (now_of(errand).state, now_of(errand).last_words) == ("done", "Visit 987654 is gone")
