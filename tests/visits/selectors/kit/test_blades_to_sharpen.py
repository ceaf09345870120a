from datetime import timedelta

from tests.factories import TUESDAY_TEN, make_blade, under_way
from tests.visits.worked_blades import long_used, say
from visits.domain.kit.blade_kinds import BladeFault, BladeState, EdgeBefore
from visits.selectors.kit.blades_to_sharpen import blades_to_sharpen
from visits.services.kit.change_blade_state import BladeStateWord, change_blade_state

LATER = TUESDAY_TEN + timedelta(hours=9)


def test_those_whose_turn_has_come_are_told_with_how_their_edge_was(house):
    sharp, dull = long_used(house, lasted=(20, 22)), make_blade(house.van, "Dull")
    chipped, cracked = make_blade(house.van, "Chipped"), make_blade(house.van, "Cracked")
    say(under_way(house.farm, house.van), TUESDAY_TEN, in_hand=sharp, went_dull=dull)
    for blade, fault in ((chipped, BladeFault.CHIPPED), (cracked, BladeFault.CRACKED)):
        word = BladeStateWord(BladeState.OUT_OF_USE, fault)
        change_blade_state(blade=blade, word=word, at=TUESDAY_TEN, by=house.owner)
    at_grinding = make_blade(house.van, "Away")
    word = BladeStateWord(BladeState.AT_GRINDING)
    change_blade_state(blade=at_grinding, word=word, at=TUESDAY_TEN, by=house.owner)
    found = blades_to_sharpen(house.scope, house.business, LATER, None, house.trimmer.pk)
    assert {each.blade.name: (each.is_due, each.before) for each in found.blades} == {
        "Away": (True, EdgeBefore.NOT_SAID),
        "Chipped": (True, EdgeBefore.CHIPPED),
        "Dull": (True, EdgeBefore.DULL),
        "Red handle": (False, EdgeBefore.NOT_SAID),
    }
    assert (found.van, found.usual_method) == (house.van, "belt")


def test_without_a_van_it_is_the_store(house):
    house.van.is_active = False
    house.van.save()
    make_blade(house.van, "Red").delete()
    found = blades_to_sharpen(house.scope, house.business, LATER, None, 0)
    assert (found.van, list(found.blades), found.usual_method) == (None, [], "")
