import pytest

from invoicing.domain.sending_states import SendingState, SentPaper


@pytest.mark.parametrize("kind", [SendingState, SentPaper])
def test_each_has_words_of_its_own(kind):
    assert len({member.label for member in kind}) == len(kind)
