from trimops.errands.domain.errand_states import ErrandState


def test_every_state_has_a_word_for_people():
    assert [state.label for state in ErrandState] == ["Waiting", "Under way", "Done", "Stuck"]
