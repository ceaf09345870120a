from visits.domain.planning.exact.time_left import TimeLeft


def test_time_runs_out_and_never_below_nothing():
    assert TimeLeft(-1).left == 0
    assert TimeLeft(0).over
    assert 0 < TimeLeft(100).left <= 100


def test_who_says_stop_ends_it_at_once():
    stop = []
    time = TimeLeft(100, lambda: bool(stop))
    assert not time.over
    stop.append(1)
    assert time.over
    assert time.left == 0


def test_time_gone_counts_from_the_beginning():
    time = TimeLeft(0)
    first = time.gone
    assert 0 <= first <= time.gone
