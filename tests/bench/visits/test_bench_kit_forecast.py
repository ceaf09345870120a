"""The bench in a small form: one seed, half the farms, eight months, eight weeks told of five consumables."""

from dataclasses import replace
from decimal import Decimal

import pytest

from tests.bench.visits.bench_kit_forecast import CHANCE, check, counted, line
from tests.bench.visits.drawn_uses import draw_uses
from tests.bench.visits.use_weeks import LEVELS, held, plain, plain_expected, tell_weeks
from visits.domain.kit.forecast.spread import Spread

NAMES = ("Wooden block 130 mm", "Two-part glue", "Wrap 100 mm", "Dressing pad", "Disposable gloves")


@pytest.fixture(scope="module")
def weeks():
    return list(tell_weeks(draw_uses(seed=1, months=8, farms=20), weeks=8, names=NAMES))


def test_quantiles_hold_about_as_often_as_they_say(weeks):
    """Forty weeks: within four standard errors of a share, were they independent of each other."""
    for level in LEVELS:
        assert held(weeks, level) == pytest.approx(level, abs=4 * (level * (1 - level) / len(weeks)) ** 0.5)
    assert held(weeks, 0.5) < held(weeks, 0.8) < held(weeks, 0.95)


def test_what_is_foreseen_is_about_what_is_used(weeks):
    for name in NAMES:
        own = [week for week in weeks if week.item == name]
        assert len(own) == 8
        used = float(sum(week.used for week in own))
        assert sum(week.foreseen.mean for week in own) == pytest.approx(used, rel=0.5)


def test_a_cell_is_shared_out_so_that_a_perfect_forecast_holds_as_often_as_it_says(weeks):
    """None or one, either as likely: half the weeks are at nought, half at one."""
    coin = Spread(Decimal(1), (0.5, 0.5))
    fair = [replace(weeks[0], foreseen=coin, used=Decimal(used)) for used in (0, 1)]
    for level in (0.2, *LEVELS):
        assert held(fair, level) == pytest.approx(level)
    # The plain share is too high, as it should be.
    assert plain(fair, 0.8) == plain_expected(fair, 0.8) == 1


def test_a_week_that_was_thought_impossible_counts_as_missed_or_held(weeks):
    one = replace(weeks[0], foreseen=Spread(Decimal(1), (0.0, 1.0)))
    assert replace(one, used=Decimal(7)).within(CHANCE) == 0
    assert replace(one, used=Decimal(0)).within(CHANCE) == 1


@pytest.mark.parametrize(("used", "words"), [(0, "holds 1.000"), (99_999, "holds 0.000")])
def test_the_bench_raises_where_a_bar_is_missed(weeks, used, words):
    with pytest.raises(AssertionError, match=words):
        check([replace(week, used=Decimal(used), foreseen=_wide()) for week in weeks])


def _wide():
    return Spread(Decimal(1), (0.01, 0.99 / 2, 0.99 / 2))


def test_it_raises_for_one_consumable_that_hides_among_the_others(weeks):
    fair = [
        replace(weeks[0], item=f"item {item}", foreseen=Spread(Decimal(1), (0.1,) * 10), used=Decimal(used))
        for item in range(20)
        for used in [*range(10)] * 4
    ]
    check(fair)
    bad = [replace(week, used=Decimal(9)) if week.item == "item 3" else week for week in fair]
    with pytest.raises(AssertionError, match="item 3"):
        check(bad)


def test_a_line_tells_every_share(weeks):
    told = line("some", weeks)
    assert told.count("(") == len(LEVELS)
    assert f"{held(weeks, CHANCE):.3f}" in told


def test_what_says_the_same_is_counted_once(weeks):
    again = [replace(week, item="Grinder disc") for week in weeks[:3]]
    assert counted([*weeks, *again]) == weeks
