"""Drives by the ids of the document."""

from datetime import timedelta

import pytest

from tests.visits.domain.planning.hand_made import job, week
from visits.domain.planning.replan.drives import Drives


def test_from_place_to_place_and_none_to_itself():
    drives = Drives(week(job("a")))
    assert drives.between("yard", "far") == timedelta(hours=1)
    assert drives.between("far", "near") == timedelta(minutes=40)
    assert drives.between("near", "near") == timedelta(0)


def test_a_place_that_is_not_there_is_an_error():
    with pytest.raises(KeyError):
        Drives(week()).between("yard", "hill")
