from tests.bench.fuzz.bench_fuzz import main


def test_it_tries_each_inlet_and_prints_what_it_found(capsys):
    main(110, bombs=False)
    printed = capsys.readouterr().out
    assert "herd list" in printed
    assert "110 spoilt files" in printed
