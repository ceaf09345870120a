from trimops.paper.fitting import fits
from trimops.paper.footing import FOOT_SIZE, FOOT_WIDTH, footing

LONG = "Over Skelder and Far Moss Dairy Partners " * 5


def test_what_fits_is_left_as_it_is():
    assert footing(("Ann Brook", "High Thornbeck"), "1 Dec 2026") == "Ann Brook · High Thornbeck · 1 Dec 2026"


def test_a_long_name_is_cut_the_short_one_and_the_day_are_not():
    told = footing(("Ann Brook", LONG), "visit of 1 Dec 2026, version 2")
    assert told.startswith("Ann Brook · Over Skelder")
    assert told.endswith("… · visit of 1 Dec 2026, version 2")
    assert fits(told, FOOT_WIDTH, FOOT_SIZE)


def test_two_long_names_share_the_room():
    first, second, day = footing((LONG, LONG), "1 Dec 2026").split(" · ")
    assert day == "1 Dec 2026"
    assert len(first) == len(second) > 30
