"""How the figures of a load run are told: parts of the time, slopes, ratios."""

import pytest

from tests.bench.load.bench_load import table_of
from tests.bench.load.load_run import told_of
from tests.bench.load.memory import grown
from tests.bench.load.replay import BARE, Heard


def test_memory_that_stays_is_flat_and_its_warming_up_does_not_count():
    looks = [(at, 100 + at if at < 60 else 200) for at in range(0, 181, 5)]
    found = grown(looks)
    assert (found.second_third, found.last_third, found.ratio) == (200, 200, 1)
    assert found.mb_an_hour == pytest.approx(0)


def test_memory_that_grows_by_a_megabyte_a_second_is_told():
    found = grown([(at, 100 + at) for at in range(0, 181, 5)])
    assert found.mb_an_hour == pytest.approx(3600)
    assert found.ratio > 1.2


def test_p95_is_of_all_but_the_bare_view_and_set_beside_it():
    seconds = {"week page": [each / 1000 for each in range(1, 101)], BARE: [0.002] * 10}
    told = told_of(Heard(seconds, {200: 110}, [], [0.0]))
    assert (told["all"]["calls"], told["all"]["p95_ms"], told["p95_to_bare"]) == (100, 96.0, 48.0)
    assert told["kinds"]["week page"]["share"] == 1
    assert BARE not in told["kinds"]


def test_the_table_says_each_kind_and_the_memory():
    told = told_of(Heard({"photo": [0.1], BARE: [0.01]}, {200: 2}, ["GET /: 500"], [0.0]))
    memory = {"second_third": 100.0, "last_third": 101.0, "ratio": 1.01, "mb_an_hour": 3.0}
    told |= {"memory_mb": [memory], "businesses": 2, "seconds": 12, "cores": 2, "machine_load": [1.0]}
    words = table_of(told)
    assert "1 wrong answers" in words
    assert "photo" in words
    assert "(+1.0 %, +3.0 MB an hour)" in words
