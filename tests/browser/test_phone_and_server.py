"""What the phone says of a cow is what the server keeps of her: referrals, re-checks, kit, her last trims in words."""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from decimal import Decimal

import pytest
from playwright.sync_api import Browser

from tests.browser.phone_entries import on_wire
from tests.browser.phone_modules import Module, module_alone
from tests.browser.sound_cows import sound_entry
from tests.factories import (
    House,
    finish,
    make_consumable,
    make_cow,
    make_house,
    make_kit,
    planned,
    put_down,
    under_way,
)
from visits.domain.actions import BlockKind
from visits.domain.crush_entry import CowEntry
from visits.domain.kit.stock_kinds import ConsumableKind, UsePer
from visits.domain.kit.use_rules import Recipe
from visits.models import Recheck, Referral, StockMovement, Trim, Visit
from visits.selectors.crush_papers import crush_papers

pytestmark = pytest.mark.xdist_group("browser")
COWS = 24
ASK = """
const { entry, day } = given;
return {
  kind: it.trimKind(entry),
  faults: it.refusals(entry, given.papers),
  referrals: it.referrals(entry, given.papers).map(({ foot, reason }) => [foot ?? "", reason]),
  rechecks: it.rechecksFor(entry, given.papers, day, given.blocks)
    .map(({ foot, cause, what, due_from, due_until }) => [foot, cause, what, due_from, due_until]),
  used: [...it.materials(entry, given.papers)],
};
"""


@pytest.fixture
def house(db: None) -> House:
    house = make_house()
    make_kit(house.business)
    one, both = Decimal(1), Decimal("1.15")
    rubber, tips = Recipe(UsePer.BLOCK, one, BlockKind.RUBBER), Recipe(UsePer.BLOCK, both)
    for name, kind, recipe in (
        ("Rubber block", ConsumableKind.BLOCK, (rubber,)),
        ("Glue tips", ConsumableKind.GLUE, (tips, Recipe(UsePer.BLOCK, both, BlockKind.EVA))),
        ("Dressing", ConsumableKind.DRESSING, (Recipe(UsePer.DRESSING, one),)),
        ("Gloves", ConsumableKind.GLOVES, (Recipe(UsePer.COW, both), Recipe(UsePer.FOOT, one))),
        ("Rags", ConsumableKind.OTHER, (Recipe(UsePer.VISIT, one),)),
    ):
        make_consumable(house.business, name, kind, *recipe)
    return house


@pytest.fixture
def visit(house: House) -> Visit:
    return under_way(house.farm, house.van)


def papers_of(visit: Visit, house: House) -> dict[str, object]:
    return crush_papers(house.scope, visit, by=house.trimmer, now=datetime.now(UTC))


@pytest.fixture(scope="module")
def rules(browser: Browser) -> Iterator[Module]:
    with module_alone(browser, "rules.js") as module:
        yield module


@pytest.fixture(scope="module")
def words(browser: Browser) -> Iterator[Module]:
    with module_alone(browser, "words.js") as module:
        yield module


def herd(visit: Visit, house: House) -> list[tuple[Trim, CowEntry]]:
    """Cows of all kinds, put down on the visit."""
    made = [sound_entry(seed) for seed in range(COWS)]
    cows = [make_cow(house.farm, str(1000 + seed)) for seed in range(COWS)]
    fields = ("mobility_scale", "mobility_score", "belly_band_minutes", "crush_seconds", "note", "for_vet")
    return [
        (put_down(visit, cow, *entry.feet, **{name: getattr(entry, name) for name in fields}), entry)
        for cow, entry in zip(cows, made, strict=True)
    ]


def test_the_server_keeps_what_the_phone_showed(rules: Module, visit: Visit, house: House) -> None:
    papers = papers_of(visit, house)
    met = set()
    for trim, entry in herd(visit, house):
        day = trim.recorded_at.astimezone(house.business.zone).date()
        asked = {"papers": papers, "entry": on_wire(entry), "day": day.isoformat(), "blocks": []}
        said = rules.run(ASK, asked)
        assert said == stored(trim), entry
        met |= {name for name, value in said.items() if value}
    assert met == {"kind", "referrals", "rechecks", "used"}, "none was refused, and all the rest was met"


def stored(trim: Trim) -> dict[str, object]:
    """The rows that the server made of her, in the shape of the phone's answers."""
    scope = trim.scope
    rechecks = Recheck.objects.within(scope).filter(from_trim=trim).order_by("id")
    used = (
        StockMovement.objects.within(scope).filter(trim=trim).order_by("consumable__kind", "consumable__name")
    )
    return {
        "kind": trim.kind,
        "faults": [],
        "referrals": [
            [r.foot, r.reason] for r in Referral.objects.within(scope).filter(trim=trim).order_by("id")
        ],
        "rechecks": [[r.foot, r.cause, r.what, str(r.due_from), str(r.due_until)] for r in rechecks],
        "used": [[row.consumable_id, float(-row.quantity)] for row in used],
    }


def test_a_visit_uses_once_what_the_phone_counts_once(rules: Module, visit: Visit, house: House) -> None:
    gloves = Recipe(UsePer.VISIT, Decimal("0.75")), Recipe(UsePer.COW, Decimal(1))
    make_consumable(house.business, "Long gloves", ConsumableKind.GLOVES, *gloves)
    said = rules.run("return [...it.visitMaterials(given)]", papers_of(visit, house))
    put_down(visit, house.cow)
    finish(visit, house.trimmer)
    booked = StockMovement.objects.within(house.scope).filter(visit=visit, use_of="visit")
    assert sorted(map(tuple, said)) == sorted((row.consumable_id, float(-row.quantity)) for row in booked)
    assert len(said) == 2


def test_a_block_from_the_visit_before_keeps_its_days(rules: Module, visit: Visit, house: House) -> None:
    """The papers of the next visit carry the block; on both sides it stands beside what is found now."""
    cow, entry = make_cow(house.farm, "7"), find_blocked()
    put_down(visit, cow, *entry.feet)
    later = under_way(house.farm, house.van, start=visit.started_at + timedelta(days=10))
    papers = papers_of(later, house)
    blocks = next(row["blocks"] for row in papers["cows"] if row["id"] == cow.pk)
    assert blocks
    seen = CowEntry(feet=tuple(type(foot)(foot.foot, has_pain=True) for foot in entry.feet))
    trim = put_down(later, cow, *seen.feet)
    day = trim.recorded_at.astimezone(house.business.zone).date().isoformat()
    said = rules.run(ASK, {"papers": papers, "entry": on_wire(seen), "day": day, "blocks": blocks})
    assert said == stored(trim)
    assert [row[1] for row in said["rechecks"]] == ["block"] * len(said["rechecks"]) != []


def find_blocked() -> CowEntry:
    return next(e for e in map(sound_entry, range(1000)) if any(list(foot.blocks()) for foot in e.feet))


def test_a_cow_s_last_trim_reads_the_same_from_the_papers_and_from_the_phone(
    words: Module, visit: Visit, house: House
) -> None:
    done = herd(visit, house)
    later = planned(house.farm, house.van, start=visit.started_at + timedelta(days=40))
    papers = papers_of(later, house)
    last = {row["id"]: row["last"][0] for row in papers["cows"] if row["last"]}
    parts = "['foundLines', 'doneLines', 'vetLines', 'entryLines']"
    ask = f"return {parts}.map((name) => it[name](given.entry, given.papers))"
    for trim, entry in done:
        told = [last[trim.cow_id][part] for part in ("found", "done", "for_vet")]
        said = words.run(ask, {"entry": on_wire(entry), "papers": papers})
        assert said == [*told, [line for part in told for line in part]]
