"""The bench of offers on few requests: it finds what trying everything finds, and says so when it does not."""

from dataclasses import replace
from random import Random

import pytest

from tests.bench.planning import bench_offers
from tests.bench.planning.bench_offers import asked_job, check_starts, main, same, stood_week
from visits.domain.planning.offers.find_offers import find_offers
from visits.domain.planning.offers.standing_week import StandingWeek


def test_it_prints_the_times_of_every_way(capsys, monkeypatch):
    monkeypatch.setattr(bench_offers, "WEEKS", [(3, 0.3)])
    # because: one request on a busy machine says nothing about the median
    monkeypatch.setattr(bench_offers, "OFFERS_MS", 10_000)
    monkeypatch.setattr(bench_offers, "MOVES_MS", 10_000)
    main(["--asked", "1"])
    told = capsys.readouterr().out
    assert "1 requests" in told
    assert all(name in told for name in ("offers kept", "offers cold", "moves kept", "moves by hand"))


def test_a_place_too_many_or_a_wrong_price_stops_it():
    with pytest.raises(SystemExit, match="prices differ"):
        same({"a": 1.0}, {"a": 1.1}, "prices")
    with pytest.raises(SystemExit, match="2 found, 1 by trying everything"):
        same({"a": 1.0, "b": 1.0}, {"a": 1.0}, "places")


def test_a_start_told_wrongly_stops_it():
    board, week = stood_week(3, 0.3, 2)
    dice = Random(1)
    asked = [asked_job(board, dice) for _ in range(8)]
    job, offers = next(
        (job, found) for job in asked if (found := find_offers(StandingWeek(board, week), job))
    )
    check_starts(board, job, offers)
    later = [replace(offer, first=offer.first + 6001) for offer in offers]
    with pytest.raises(SystemExit, match="told wrongly"):
        check_starts(board, job, later)
