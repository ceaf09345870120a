import time

import pytest

from visits.domain.travel.drive import CarLeg
from visits.domain.travel.missing_blocks import Block
from visits.domain.travel.travel_source import TravelSource
from visits.roads.ask_blocks import ask_blocks
from visits.roads.road_engine import RoadsUnavailable

BLOCKS = [Block(("54.10000,-2.30000",), ("54.20000,-2.40000",))] * 5


class SlowMap:
    """Takes its time over each block and remembers how much it was given."""

    source, key = TravelSource.LOCAL, "slow"

    def __init__(self, takes):
        self.takes, self.given = takes, []

    def table(self, sources, destinations, seconds):
        self.given.append(seconds)
        time.sleep(self.takes)
        return ((CarLeg(len(self.given), sources[0][0]),),)


def test_each_block_comes_with_its_answer_and_the_points_of_its_places():
    answers = list(ask_blocks(SlowMap(0), BLOCKS[:2], 5))
    assert [block for block, _ in answers] == BLOCKS[:2]
    assert [table[0][0] for _, table in answers] == [CarLeg(1, 54.1), CarLeg(2, 54.1)]


def test_all_blocks_share_one_time_and_what_came_before_it_ran_out_stands():
    slow, came = SlowMap(0.1), []
    with pytest.raises(RoadsUnavailable, match="too slow"):
        came.extend(table for _, table in ask_blocks(slow, BLOCKS, 0.25))
    assert 1 <= len(came) == len(slow.given) <= 3
    assert slow.given == sorted(slow.given, reverse=True)


def test_time_spent_on_keeping_an_answer_is_not_the_maps():
    kept = []
    for block, _ in ask_blocks(SlowMap(0), BLOCKS[:3], 0.15):
        time.sleep(0.1)
        kept.append(block)
    assert len(kept) == 3
