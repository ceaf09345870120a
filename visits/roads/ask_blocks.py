"""Asks a road map for block after block of a table, within a time for all of them."""

from collections.abc import Iterable, Iterator
from time import monotonic

from visits.domain.travel.missing_blocks import Block
from visits.domain.travel.place import point_of
from visits.roads.road_engine import CarTable, RoadEngine, RoadsUnavailable


def ask_blocks(
    engine: RoadEngine, blocks: Iterable[Block], seconds: float
) -> Iterator[tuple[Block, CarTable]]:
    """Each block with its answer as it comes; RoadsUnavailable ends it, what came before stands.

    `seconds` are those spent on asking; what is done with an answer is not counted.
    """
    left = seconds
    for block in blocks:
        if left <= 0:
            raise RoadsUnavailable("the roads server is too slow")
        begun = monotonic()
        table = _ask(engine, block, left)
        left -= monotonic() - begun
        yield block, table


def _ask(engine: RoadEngine, block: Block, seconds: float) -> CarTable:
    sources = [point_of(key) for key in block.sources]
    return engine.table(sources, [point_of(key) for key in block.destinations], seconds)
