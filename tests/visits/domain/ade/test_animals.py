"""Cows, lactations and the farm."""

from dataclasses import replace

from farms.domain.cow_status import CowStatus
from tests.visits.domain.ade.herds import BARE, DAISY, FARM, LATER
from visits.domain.ade.animals import animal, lactations, location


def test_a_cow_is_told_by_what_is_known_of_her():
    told = animal(DAISY, FARM, LATER)
    assert told["birthDate"] == "2021-07-01T12:00:00Z"
    assert (told["managementTag"], told["lactationStatus"], told["gender"]) == (
        "416",
        "Lactating",
        "Female",
    )


def test_what_is_not_known_is_left_out():
    told = animal(replace(BARE, status=CowStatus.HEIFER), FARM, LATER)
    assert not {"birthDate", "alternativeIdentifiers", "lactationStatus"} & set(told)


def test_a_bull_is_a_bull():
    assert animal(replace(BARE, status=CowStatus.BULL), FARM, LATER)["gender"] == "Male"


def test_each_calving_begins_a_lactation_and_its_number_is_told_only_if_known():
    first, second = lactations(DAISY, LATER)
    assert (first["beginDate"], first["parity"]) == ("2023-09-01T12:00:00Z", 1)
    assert second["beginDate"] == "2024-09-09T12:00:00Z"
    assert "parity" not in second


def test_the_farm_is_told_by_name_and_by_our_key():
    told = location(FARM, LATER)
    assert (told["name"], told["identifier"]["id"]) == ("Low Croft", "7")
