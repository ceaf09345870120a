from datetime import timedelta
from uuid import uuid4

from tests.factories import NOON, make_blade, under_way
from visits.domain.kit.blade_kinds import BladeFault, BladeState, TurnPart
from visits.models import BladeEvent, BladeSaid, BladeTurn, Sharpening
from visits.services.kit.settle_blade import settle_blade

LONG_AGO = NOON.date() - timedelta(days=9)


def say(house, blade, visit, part, at):
    turn = BladeTurn.objects.create(
        business=house.business, visit=visit, record=uuid4(), at=at, by=house.trimmer
    )
    BladeSaid.objects.create(business=house.business, turn=turn, blade=blade, part=part.value)
    return turn


def test_the_row_says_what_events_words_at_the_crush_and_sharpenings_say(house):
    blade = make_blade(house.van, "Blue", bought_on=LONG_AGO)
    visit = under_way(house.farm, house.van)
    say(house, blade, visit, TurnPart.IN_HAND, NOON)
    assert settle_blade(blade=blade).state == BladeState.IN_USE
    BladeEvent.objects.create(
        business=house.business, blade=blade, state=BladeState.AT_GRINDING.value, at=NOON + timedelta(hours=1)
    )
    assert settle_blade(blade=blade).state == BladeState.AT_GRINDING
    Sharpening.objects.create(business=house.business, blade=blade, at=NOON + timedelta(hours=2))
    row = settle_blade(blade=blade)
    assert (row.state, row.state_since) == (BladeState.IN_USE, NOON + timedelta(hours=2))


def test_a_chip_taken_back_at_the_crush_leaves_the_blade_as_it_was(house):
    blade = make_blade(house.van, "Blue", bought_on=LONG_AGO)
    turn = say(house, blade, under_way(house.farm, house.van), TurnPart.CHIPPED, NOON)
    row = settle_blade(blade=blade)
    assert (row.state, row.fault) == (BladeState.OUT_OF_USE, BladeFault.CHIPPED)
    turn.delete()
    row = settle_blade(blade=blade)
    assert (row.state, row.fault) == (BladeState.BOUGHT, "")
