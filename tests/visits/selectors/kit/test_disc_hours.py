from datetime import timedelta

import pytest

from tests.factories import TUESDAY_TEN, make_blade, under_way
from tests.visits.worked_blades import cut, say
from visits.domain.kit.blade_kinds import BladeKind, BladeState
from visits.domain.kit.put_right import PutRight
from visits.selectors.kit.blade_logs import blade_logs
from visits.selectors.kit.disc_hours import disc_hours
from visits.services.kit.change_blade_state import BladeStateWord, change_blade_state


def test_a_disc_has_turned_for_its_cows_since_it_was_new(house):
    disc = make_blade(house.van, "Disc", kind=BladeKind.GRINDER_DISC.value, hours_limit=1)
    visit = under_way(house.farm, house.van)
    say(visit, TUESDAY_TEN, in_hand=disc)
    cut(house, visit, 10, 20, 30, crush_seconds=1800)

    def hours():
        return disc_hours(blade_logs(house.scope, TUESDAY_TEN + timedelta(days=1)), disc)

    assert hours().hours == pytest.approx(1.5)
    assert hours().is_over
    word = BladeStateWord(BladeState.IN_USE, put_right=PutRight.REPLACED)
    change_blade_state(blade=disc, word=word, at=TUESDAY_TEN + timedelta(minutes=25), by=house.owner)
    assert hours().hours == pytest.approx(0.5)


def test_a_knife_without_a_limit_has_no_hours(house):
    knife = make_blade(house.van, "Red")
    assert disc_hours(blade_logs(house.scope, TUESDAY_TEN), knife) is None
