import pytest

from invoicing.domain.sending_states import SendingState, SentPaper


@pytest.mark.parametrize("kind", [SendingState, SentPaper])
def test_each_has_words_of_its_own(kind):
    assert len({member.label for member in kind}) == len(kind)


def test_only_what_did_not_surely_go_may_go_again():
    assert [state.value for state in SendingState if state.may_go_again] == ["failed", "unclear"]
