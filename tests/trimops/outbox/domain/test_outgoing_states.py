import pytest

from trimops.outbox.domain.outgoing_states import Channel, OutgoingState, Topic


@pytest.mark.parametrize("kind", [OutgoingState, Topic, Channel])
def test_each_has_words_of_its_own(kind):
    assert len({member.label for member in kind}) == len(kind)


def test_only_what_did_not_go_may_go_again():
    again = [state.value for state in OutgoingState if state.may_go_again]
    assert again == ["failed", "lapsed", "left"]


def test_the_money_is_kept_apart():
    assert {topic.value for topic in Topic if topic.is_money} == {"invoice", "reminder", "statement"}
