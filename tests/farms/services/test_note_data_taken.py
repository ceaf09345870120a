"""Who took the data out before it was erased is kept with the wish."""

import logging

from farms.services.ask_erasure import ask_erasure
from farms.services.note_data_taken import note_data_taken
from tests.factories import NOON


def test_it_stands_in_the_wish_to_be_erased(house):
    wish = ask_erasure(farm=house.farm, note="", at=NOON, by=house.client)
    note_data_taken(farm=house.farm, at=NOON, by=house.client)
    assert note_data_taken(farm=house.farm, at=NOON, by=house.owner)
    wish.refresh_from_db()
    assert [line["by"] for line in wish.outcome["taken out"]] == [house.client.pk, house.owner.pk]


def test_without_a_wish_it_stands_in_the_log_alone(house, caplog):
    with caplog.at_level(logging.INFO, logger="farms"):
        assert not note_data_taken(farm=house.farm, at=NOON, by=house.client)
    assert f"data of farm {house.farm.pk} taken out by person {house.client.pk}" in caplog.text
