import pytest

from tests.factories import make_business
from tests.trimops.errands.errand_hands import now_of, written
from trimops.errands.services.forget_errands import ERASED, forget_errands


@pytest.mark.django_db
def test_words_that_name_the_farm_are_blotted_and_no_others():
    business = make_business()
    named = written(business, state="stuck", last_words="Low Croft has no address: write one.")
    other = written(business, state="stuck", last_words="High Croft has no address: write one.")
    far = written(make_business("Elm & Oak"), state="stuck", last_words="Low Croft has no address.")
    assert forget_errands(scope=named.scope, name="Low Croft") == 1
    assert [now_of(row).last_words for row in (named, other, far)] == [
        ERASED,
        other.last_words,
        far.last_words,
    ]


@pytest.mark.django_db
def test_no_name_blots_nothing():
    errand = written(state="stuck", last_words="Something")
    assert forget_errands(scope=errand.scope, name=" ") == 0
