"""The rows of figures beside the pictures, in the words a farmer reads. No database."""

from dataclasses import replace

from tests.visits.domain.herd.small_herds import LONG_AGO, day
from tests.visits.domain.herd.told_herds import LAST_YEAR, herd_of, round_on
from visits.domain.actions import BlockKind
from visits.domain.feet import Claw, Foot
from visits.domain.herd.facts import BlockOn, CowLife, HerdScored
from visits.domain.herd.herd_story import herd_told
from visits.domain.herd.story_others import OtherHerds
from visits.domain.mobility import MobilityScale
from visits.selectors.herd_tables import herd_tables

BLOCK = BlockOn(1, Foot.LEFT_HIND, Claw.MEDIAL, BlockKind.WOOD, day(700), day(728), day(725))


def tables(facts):
    return {table.title: table for table in herd_tables(facts, herd_told(facts, LAST_YEAR, OtherHerds()))}


def whole_herd(**more):
    rounds = [round_on(number, 80, sore) for number, sore in ((100, 30), (500, 33), (800, 46))]
    return replace(herd_of(80, *rounds), **more)


def test_how_a_herd_walks_is_a_share_with_its_interval_and_the_note_says_of_whom():
    scored = HerdScored(day(800), MobilityScale.UK, (*[2] * 10, *[1] * 58), whole_herd=True)
    table = tables(whole_herd(scorings=(scored,)))["How the herd walks"]
    assert table.rows[0].figure == "10 of 68, 15 per 100 (8.2 to 25)"
    assert table.note.startswith("Cows that walk lame")


def test_counts_of_blocks_read_well_for_one_and_for_many():
    left = CowLife(200, "200", LONG_AGO, day(720))
    lost = replace(BLOCK, cow=200, off_on=None)
    lives = (*herd_of(80).cows, left)
    (row,) = tables(whole_herd(cows=lives, blocks=(BLOCK, BLOCK, lost, lost)))["Blocks and re-checks"].rows
    assert row.figure.startswith("2 of 2, 100 %")
    assert row.basis == "2 off in time; 2 not due yet when the cow left"


def test_a_cost_is_rounded_to_tens_and_no_reader_is_sent_to_our_own_notes():
    told = tables(whole_herd())
    costs = told["What the cases may have cost"].rows
    assert costs
    assert all(word[-1] == "0" for row in costs for word in row.figure.split() if word[-1].isdigit())
    sources = [row.source for table in told.values() for row in table.rows if row.source]
    assert not [source for source in sources if "trade-facts" in source]
