from datetime import timedelta

from tests.factories import TUESDAY_TEN, make_blade, under_way
from tests.visits.worked_blades import long_used, say
from visits.domain.kit.blade_kinds import BladeFault, BladeState, SharpenMethod
from visits.selectors.kit.blade_story import blade_story, made_words
from visits.services.kit.change_blade_state import BladeStateWord, change_blade_state

LATER = TUESDAY_TEN + timedelta(days=1)


def test_its_edges_stand_with_the_sharpenings_that_made_them(house):
    blade = long_used(house)
    story = blade_story(house.scope, blade, LATER)
    lines = [*story.edges, *story.more_edges]
    assert [line.edge.cows for line in lines] == [0, 33, 30, 28, 26, 25, 24, 22, 20, 18]
    assert lines[0].sharpening.minutes == 6
    assert lines[-1].sharpening is None
    assert story.findings[0].startswith("Half of the edges from the belt (hoof knife) were dull by 25 cows")
    assert "all edges: hoof knife" in story.svg


def test_its_life_is_told_with_what_broke_at_the_crush(house):
    blade = make_blade(house.van, "Red")
    say(under_way(house.farm, house.van), TUESDAY_TEN, chipped=blade)
    word = BladeStateWord(BladeState.RETIRED, BladeFault.WORN, note="Thin as paper")
    change_blade_state(blade=blade, word=word, at=LATER, by=house.owner)
    story = blade_story(house.scope, blade, LATER + timedelta(hours=1))
    assert [(line.what, line.more) for line in story.life] == [
        ("Retired", "worn away. Thin as paper"),
        ("Chipped", "said at the crush"),
    ]
    assert story.answer == "Red: retired"
    assert story.svg == ""
    assert story.findings == (
        "Nothing is known of the edges as bought (hoof knife) yet.",
        "Nothing is known of the edges of this blade yet.",
        "Nothing is known of all edges of its kind (hoof knife) yet.",
    )


def test_the_bevel_is_told_where_steel_and_angle_are_known(house):
    blade = make_blade(house.van, "Red", edge_angle=30, thickness_mm=2)
    story = blade_story(house.scope, blade, LATER)
    assert (round(story.bevel, 6), story.steel) == (4, "2")
    assert blade_story(house.scope, make_blade(house.van, "Blue"), LATER).bevel is None


def test_every_way_of_sharpening_has_words():
    assert len({made_words(method) for method in (*SharpenMethod, "new", None)}) == len(SharpenMethod) + 2
