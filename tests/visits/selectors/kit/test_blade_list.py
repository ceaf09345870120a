from datetime import timedelta

from tests.factories import TUESDAY_TEN, make_blade, make_member, make_user, make_van, planned, under_way
from tests.visits.worked_blades import cut, long_used, say
from trimops.accounts.roles import Role
from visits.domain.kit.blade_kinds import BladeKind, BladeState
from visits.selectors.kit.blade_list import blade_places

MONDAY_EVENING = TUESDAY_TEN - timedelta(hours=16)
LATER = TUESDAY_TEN + timedelta(days=1)


def places(house, now=MONDAY_EVENING, wish=None, driver=0):
    return blade_places(house.scope, house.business, now, wish, driver)


def test_each_blade_has_its_line_and_the_days_what_to_grind(house):
    red = long_used(house, lasted=(5, 5, 6, 6, 7, 7, 8, 9, 9))
    make_blade(house.van, "Old", state=BladeState.RETIRED.value)
    visit = under_way(house.farm, house.van, TUESDAY_TEN - timedelta(days=7))
    say(visit, visit.started_at, in_hand=red)
    cut(house, visit, *range(1, 8))
    planned(house.farm, house.van, head_count=4)
    found = places(house).chosen
    assert found.answer == "Grind “Red handle” before tomorrow"
    (line,) = found.lines
    assert (line.is_in_hand, line.mark, line.words) == (
        True,
        ("due", "Near its end"),
        "7 cows: may drag at any cow now",
    )
    assert "<svg" in line.bar
    assert [line.blade.name for line in found.gone] == ["Old"]
    assert [(day.name, day.chance) for day in found.days] == [("tomorrow", "0")]
    assert found.minutes == 6


def test_a_disc_is_told_by_its_hours(house):
    disc = make_blade(house.van, "Disc", kind=BladeKind.GRINDER_DISC.value, hours_limit=1)
    visit = under_way(house.farm, house.van)
    say(visit, TUESDAY_TEN, in_hand=disc)
    cut(house, visit, 10, 20, crush_seconds=1800)
    (line,) = places(house, LATER).chosen.lines
    assert (line.mark, line.words, line.bar) == (("due", "Replace it"), "2 cows", "")


def test_the_van_is_the_one_wished_for_or_driven_and_the_store_is_told_besides(house):
    driver = make_member(house.business, Role.TRIMMER, make_user()).user
    second = make_van(house.business, driver, "Van 2")
    spare = make_blade(second, "Spare")
    spare.van = None
    spare.save()
    assert places(house).chosen.grinding.van == house.van
    assert places(house, driver=driver.pk).chosen.grinding.van == second
    found = places(house, wish=second.pk)
    assert found.chosen.answer == "No knife is on the list yet"
    assert [line.blade.name for line in found.spare] == ["Spare"]
