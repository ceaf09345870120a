"""The rules of the trade on the phone say what the Python ones say, word for word, on random entries sound and odd."""

from collections.abc import Callable
from datetime import date

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.browser.conftest import Site
from tests.browser.phone_entries import DAYS, entries, on_wire, standing_on
from tests.browser.phone_modules import Module, module_of
from visits.domain.actions import BlockKind
from visits.domain.cow_entry_json import cow_entry_json
from visits.domain.crush_catalogue import crush_catalogue
from visits.domain.crush_entry import CowEntry
from visits.domain.kit.stock_kinds import UsePer
from visits.domain.kit.use_rules import Recipe, Recipes, used_by_cow, used_by_visit
from visits.domain.lesions import LesionCode
from visits.domain.mobility import ScoreOutsideScale
from visits.domain.recheck_due import StandingBlock, rechecks_for
from visits.domain.recheck_figures import RecheckFigures
from visits.domain.referral import referrals_for
from visits.domain.trim_doubts import doubts
from visits.domain.trim_figures import TrimFigures
from visits.domain.trim_refusals import refusals, sore_claws

pytestmark = pytest.mark.xdist_group("browser")
FEWEST = 2_000
PER_CALL = 10
ASK = """
const papers = { ...given.papers, figures: given.figures, consumables: given.consumables };
return given.cows.map(({ entry, day, standing }) => ({
  kind: it.trimKind(entry),
  refusals: it.refusals(entry, papers),
  doubts: it.doubts(entry, papers),
  referrals: it.referrals(entry, papers),
  rechecks: it.rechecksFor(entry, papers, day, standing),
  sore: entry.feet.map((foot) => it.soreClaws(foot, papers)),
  used: [...it.materials(entry, papers)],
  once: [...it.visitMaterials(papers)],
}));
"""

Cow = tuple[CowEntry, date, list[StandingBlock]]
cows = st.lists(
    DAYS.flatmap(lambda day: st.tuples(entries, st.just(day), standing_on(day))),
    min_size=PER_CALL,
    max_size=PER_CALL,
)
spans = st.tuples(st.integers(0, 60), st.integers(0, 20)).map(lambda span: (span[0], sum(span)))
own_marks = st.builds(
    TrimFigures,
    shortest_wall_mm=st.integers(70, 90),
    wall_measured_from=st.sampled_from([TrimFigures().wall_measured_from, "the hair line"]),
    toe_angle_from=st.integers(44, 48),
    toe_angle_to=st.integers(50, 56),
    belly_band_minutes=st.integers(5, 30),
)
own_days = st.builds(
    RecheckFigures,
    block=st.fixed_dictionaries(dict.fromkeys(BlockKind, spans)),
    lesion=st.dictionaries(st.sampled_from(LesionCode), spans, max_size=12),
    lame_trim=spans,
)
recipe_lines = st.tuples(
    st.sampled_from([(per, None) for per in UsePer] + [(UsePer.BLOCK, kind) for kind in BlockKind]),
    st.decimals("0.01", "999.99", places=2),
).map(lambda line: Recipe(line[0][0], line[1], line[0][1]))
own_recipes = st.dictionaries(st.integers(1, 99), st.lists(recipe_lines, max_size=4), min_size=1, max_size=4)


@pytest.fixture
def rules(door: Site) -> Module:
    return module_of(door, "rules.js")


def test_every_rule_is_the_same_on_the_phone(rules: Module) -> None:
    compared, papers = 0, crush_catalogue()

    @settings(max_examples=FEWEST // PER_CALL, suppress_health_check=list(HealthCheck))
    @given(cows, st.just(TrimFigures()) | own_marks, st.just(RecheckFigures()) | own_days, own_recipes)
    def compare(cows: list[Cow], marks: TrimFigures, days: RecheckFigures, recipes: Recipes) -> None:
        nonlocal compared
        figures = {"trim": on_wire(marks), "rechecks": on_wire(days)}
        asked = [{"entry": on_wire(e), "day": on_wire(day), "standing": on_wire(s)} for e, day, s in cows]
        given = {"papers": papers, "figures": figures, "cows": asked, "consumables": kit_of(recipes)}
        answers = rules.run(ASK, given)
        for (entry, day, standing), said in zip(cows, answers, strict=True):
            assert on_wire(entry) == cow_entry_json(entry)
            check(said, of_entry(entry), said)
            check(said, of_figures(entry, day, standing, marks, days), said)
            check(said, of_recipes(entry, recipes), said)
        compared += len(cows)

    compare()
    assert compared >= FEWEST


def kit_of(recipes: Recipes) -> list[dict[str, object]]:
    """As the papers tell it (visits/selectors/crush_kit.py)."""
    return [
        {
            "id": item,
            "uses": [
                {"per": line.per, "block_kind": line.block_kind or "", "quantity": float(line.quantity)}
                for line in lines
            ],
        }
        for item, lines in recipes.items()
    ]


def check(said: dict[str, object], rules: dict[str, Callable[[], object]], answer: dict[str, object]) -> None:
    """Each rule by Python against what the phone said; a score off its scale, refused already, has no Python answer."""
    for name, rule in rules.items():
        try:
            assert said[name] == on_wire(rule()), (name, answer)
        except ScoreOutsideScale:
            assert isinstance(said[name], list)
            assert "mobility" in [fault["rule"] for fault in said["refusals"]]


def of_entry(entry: CowEntry) -> dict[str, Callable[[], object]]:
    return {
        "kind": lambda: entry.kind,
        "refusals": lambda: refusals(entry),
        "referrals": lambda: referrals_for(entry),
        "sore": lambda: [sorted(sore_claws(foot)) for foot in entry.feet],
    }


def of_recipes(entry: CowEntry, recipes: Recipes) -> dict[str, Callable[[], object]]:
    return {
        "used": lambda: [[item, float(amount)] for item, amount in used_by_cow(recipes, entry).items()],
        "once": lambda: [[item, float(amount)] for item, amount in used_by_visit(recipes).items()],
    }


def of_figures(
    entry: CowEntry, day: date, standing: list[StandingBlock], marks: TrimFigures, days: RecheckFigures
) -> dict[str, Callable[[], object]]:
    return {
        "doubts": lambda: doubts(entry, marks),
        "rechecks": lambda: rechecks_for(entry, day, days, standing),
    }
