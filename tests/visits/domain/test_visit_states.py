import pytest

from visits.domain.visit_states import VisitReason, VisitState, may_move, moves_from


@pytest.mark.parametrize(
    ("now", "next_states"),
    [
        ("wanted", "planned called_off"),
        ("planned", "wanted confirmed under_way called_off"),
        ("confirmed", "wanted planned under_way called_off"),
        ("under_way", "finished called_off"),
        ("finished", ""),
        ("called_off", ""),
    ],
)
def test_a_visit_goes_only_where_it_may(now, next_states):
    allowed = next_states.split()
    assert [state.value for state in moves_from(VisitState(now))] == allowed
    assert [s.value for s in VisitState if may_move(VisitState(now), s)] == allowed


def test_a_visit_stays_open_until_it_is_finished_or_called_off():
    assert [state.value for state in VisitState if not state.is_open] == ["finished", "called_off"]


def test_every_open_visit_can_be_called_off():
    assert all(may_move(state, VisitState.CALLED_OFF) for state in VisitState if state.is_open)


def test_states_and_reasons_have_words_of_their_own():
    assert len({state.label for state in VisitState}) == len(VisitState)
    assert len({reason.label for reason in VisitReason}) == len(VisitReason)
