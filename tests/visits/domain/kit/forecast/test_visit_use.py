from tests.visits.domain.kit.forecast.made_models import made


def test_cows_seen_are_those_of_both_kinds():
    assert made(0, routine=12, corrective=3).cows == 15
