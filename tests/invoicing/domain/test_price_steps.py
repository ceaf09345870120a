import pytest

from invoicing.domain.price_steps import StepRule


@pytest.mark.parametrize("kind", [StepRule])
def test_each_has_words_of_its_own(kind):
    assert len({member.label for member in kind}) == len(kind)
