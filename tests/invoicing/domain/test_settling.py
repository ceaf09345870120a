import pytest

from invoicing.domain.settling import PaymentMethod, SettledBy


@pytest.mark.parametrize("kind", [PaymentMethod, SettledBy])
def test_each_has_words_of_its_own(kind):
    assert len({member.label for member in kind}) == len(kind)
