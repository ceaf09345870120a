from tests.bench.planning.bench_bound import proven


def test_a_small_made_week_is_proven_and_its_line_printed(capsys):
    assert proven(8, 1, 30.0, 0.3) < 1e-6
    assert "closed" in capsys.readouterr().out
