import importlib.util
import os

import pytest

from visits.domain.travel.travel_source import TravelSource
from visits.roads.chosen_engine import chosen_engine
from visits.roads.local_engine import local_engine
from visits.roads.road_engine import RoadsUnavailable

ADDRESS = "http://roads.example:5000"


def test_without_a_map_there_is_no_engine():
    assert chosen_engine(file="", address="") is None


def test_an_address_is_a_roads_server():
    assert chosen_engine(file="", address=ADDRESS).source is TravelSource.SERVER


def test_a_map_of_this_machine_that_cannot_be_used_gives_way_to_the_server():
    assert chosen_engine(file="/nowhere/map.osrm", address=ADDRESS).source is TravelSource.SERVER


def test_a_map_of_this_machine_that_cannot_be_used_says_why_where_there_is_no_server():
    with pytest.raises(RoadsUnavailable, match=r"extra `roads`|no prepared road map"):
        chosen_engine(file="/nowhere/map.osrm", address="")


@pytest.fixture
def library(tmp_path, monkeypatch):
    """A module of the library's name that can be found: enough to see which extract is looked at."""
    (tmp_path / "osrm.py").write_text("")
    monkeypatch.syspath_prepend(str(tmp_path))
    importlib.invalidate_caches()
    assert importlib.util.find_spec("osrm")


@pytest.mark.usefixtures("library")
def test_an_extract_that_is_prepared_anew_is_another_map(tmp_path):
    extract = str(tmp_path / "map.osrm")
    with pytest.raises(RoadsUnavailable, match="no prepared road map"):
        local_engine(extract)
    (tmp_path / "map.osrm.hsgr").write_text("first")
    first = local_engine(extract)
    os.utime(tmp_path / "map.osrm.hsgr", (2_000_000_000, 2_000_000_000))
    second = chosen_engine(file=extract, address=ADDRESS)
    assert (first.source, second.source) == (TravelSource.LOCAL, TravelSource.LOCAL)
    assert first.key != second.key
    assert max(len(first.key), len(second.key)) <= 40
