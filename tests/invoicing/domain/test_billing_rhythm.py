import pytest

from invoicing.domain.billing_rhythm import BillingRhythm


@pytest.mark.parametrize("kind", [BillingRhythm])
def test_each_has_words_of_its_own(kind):
    assert len({member.label for member in kind}) == len(kind)
