import pytest

from invoicing.domain.agreed_prices import AgreementKind


@pytest.mark.parametrize("kind", [AgreementKind])
def test_each_has_words_of_its_own(kind):
    assert len({member.label for member in kind}) == len(kind)
