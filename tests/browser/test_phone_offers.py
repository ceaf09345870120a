"""What the phone offers at a place of the sole, and what it takes a trimmer to do after what was found."""

from collections.abc import Iterator
from dataclasses import replace

import pytest
from playwright.sync_api import Browser

from tests.browser.phone_entries import on_wire
from tests.browser.phone_modules import Module, module_alone
from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_catalogue import crush_catalogue
from visits.domain.crush_entry import ActionEntry, CowEntry, FindingEntry, FootEntry
from visits.domain.feet import SKIN_ZONES, ZONE_NAMES, Claw, Foot
from visits.domain.lesions import LESIONS, DDStage, LesionCode
from visits.domain.trim_doubts import doubts
from visits.domain.trim_figures import TrimFigures
from visits.domain.trim_refusals import refusals

pytestmark = pytest.mark.xdist_group("browser")
STEPS = ["length", "balance", "model"]
INNER_FIRST = [f"{step} medial" for step in STEPS] + [f"{step} lateral" for step in STEPS]
ULCER = FindingEntry(LesionCode.SU, Claw.LATERAL, 4, 2)


@pytest.fixture(scope="module")
def rules(browser: Browser) -> Iterator[Module]:
    with module_alone(browser, "rules.js") as module:
        yield module


def papers(**changes: object) -> dict[str, object]:
    return {
        **crush_catalogue(),
        "figures": {"trim": on_wire(TrimFigures())},
        "consumables": [block("wood", 8), block("rubber", 20), {**block("", 99), "kind": "wrap"}],
        **changes,
    }


def block(kind: str, in_van: float) -> dict[str, object]:
    uses = [{"per": "block", "block_kind": kind, "quantity": 1}]
    return {"id": in_van, "kind": "block", "uses": uses, "in_van": in_van}


def offered(rules: Module, zone: int | None, claw: str = "") -> list[str]:
    ask = "return it.lesionsAt(given[0], given[1], given[2]).map((lesion) => lesion.code)"
    return rules.run(ask, [papers(), zone, claw])


# Worked by hand from the places in the list of lesions (visits/domain/lesions.py) and what is seen most often:
# Austria 2010-19 and Britten 2025, trade-facts 4.
@pytest.mark.parametrize(
    ("zone", "first"),
    [
        (1, ["WLA", "WLF", "WL", "TU", "U", "TN"]),
        (3, ["WLA", "WLF", "WL"]),
        (4, ["SU", "U", "SHD", "SHC", "SH", "DS", "TS"]),
        (5, ["TU", "U", "SHD", "SHC", "SH", "DS", "TS"]),
        (6, ["HHE", "BU", "U", "SHD", "SHC", "SH", "DS"]),
        (8, ["HFH", "HFV", "HF"]),
        (11, ["HFA", "HF"]),
        (0, ["ID", "IP", "IH"]),
        (9, ["DD", "IP", "SW"]),
        (10, ["DD"]),
    ],
)
def test_what_occurs_at_a_place_is_offered_first(rules: Module, zone: int, first: list[str]) -> None:
    assert offered(rules, zone)[: len(first)] == first


def test_each_place_offers_every_lesion_that_can_be_there_and_none_that_cannot(rules: Module) -> None:
    for zone in ZONE_NAMES:
        fitting = {code.value for code, lesion in LESIONS.items() if lesion.on_skin == (zone in SKIN_ZONES)}
        codes = offered(rules, zone)
        assert len(codes) == len(set(codes))
        assert set(codes) == fitting
        usual = [lesion.code.value for lesion in LESIONS.values() if zone in lesion.zones]
        assert set(codes[: len(usual)]) == set(usual), zone


def test_a_kind_of_lesion_stands_before_what_it_is_a_kind_of(rules: Module) -> None:
    for zone in (*ZONE_NAMES, None):
        codes = offered(rules, zone)
        usual = [code for code in codes if zone in LESIONS[LesionCode(code)].zones]
        for code in usual:
            parent = LESIONS[LesionCode(code)].parent
            assert parent is None or codes.index(code) < codes.index(parent.value), zone


def test_after_the_usual_ones_come_those_that_always_hurt(rules: Module) -> None:
    assert offered(rules, 11)[2:6] == ["WLA", "SU", "BU", "TU"]
    assert offered(rules, None, "skin")[:2] == ["IP", "SW"]


def proposed(
    rules: Module, foot: FootEntry, standing: list[object] = (), **changes: object
) -> tuple[list, list]:
    ask = "return it.proposedActions(given[0], given[1], given[2])"
    answer = rules.run(ask, [on_wire(foot), papers(**changes), list(standing)])
    return named(answer["done"]), named(answer["offer"])


def named(actions: list[dict[str, str]]) -> list[str]:
    return [" ".join(part for part in (a["kind"], a["claw"], a["block_kind"]) if part) for a in actions]


def test_a_foot_with_nothing_found_is_trimmed_inner_claw_first_behind_and_outer_first_in_front(
    rules: Module,
) -> None:
    assert proposed(rules, FootEntry(Foot.LEFT_HIND)) == (INNER_FIRST, [])
    assert proposed(rules, FootEntry(Foot.LEFT_FORE))[0][:3] == [f"{step} lateral" for step in STEPS]


def test_a_sole_ulcer_is_relieved_and_a_block_is_only_offered_and_only_on_the_sound_claw(
    rules: Module,
) -> None:
    done, offer = proposed(rules, FootEntry(Foot.LEFT_HIND, findings=(ULCER,)))
    assert done == [*INNER_FIRST, "relief lateral", "loose_horn lateral"]
    assert offer[:3] == ["block medial rubber", "wrap", "dressing"], "the van carries most of rubber"
    assert set(offer[3:]) == {f"block medial {kind}" for kind in ("wood", "eva", "shoe")}


def test_no_block_is_offered_where_both_claws_are_sore_or_one_is_on_already(rules: Module) -> None:
    inner = FindingEntry(LesionCode.WLA, Claw.MEDIAL, 3, 1)
    done, offer = proposed(rules, FootEntry(Foot.RIGHT_HIND, findings=(ULCER, inner)))
    assert {"relief lateral", "relief medial"} <= set(done)
    assert offer == ["wrap", "dressing"]


def test_bruising_that_is_slight_does_not_make_the_trim_corrective(rules: Module) -> None:
    slight = FindingEntry(LesionCode.SH, Claw.LATERAL, 5, 1)
    assert proposed(rules, FootEntry(Foot.LEFT_HIND, findings=(slight,))) == (
        INNER_FIRST,
        ["loose_horn lateral"],
    )


@pytest.mark.parametrize(("stage", "offer"), [(None, 2), (DDStage.M2, 2), (DDStage.M4_1, 2), (DDStage.M3, 0)])
def test_a_live_sore_of_the_skin_is_offered_a_dressing_and_a_wrap(
    rules: Module, stage: DDStage, offer: int
) -> None:
    sore = FindingEntry(LesionCode.DD, Claw.SKIN, 10, 2, stage)
    assert proposed(rules, FootEntry(Foot.LEFT_HIND, findings=(sore,))) == (
        INNER_FIRST,
        ["dressing", "wrap"][:offer],
    )


def test_where_blood_is_drawn_nothing_is_taken_for_done(rules: Module) -> None:
    done, offer = proposed(rules, FootEntry(Foot.LEFT_HIND, drew_blood=True, findings=(ULCER,)))
    assert done == []
    assert offer[:2] == ["block medial rubber", "wrap"]


def test_a_wall_with_nothing_to_spare_is_not_taken_for_cut(rules: Module) -> None:
    """T10: not every claw needs a cut. 75 mm is the usual mark."""
    done, offer = proposed(rules, FootEntry(Foot.LEFT_HIND, wall_mm=75))
    assert done == []
    assert offer == [*INNER_FIRST, "no_cut medial", "no_cut lateral"]
    assert proposed(rules, FootEntry(Foot.LEFT_HIND, wall_mm=76))[0] == INNER_FIRST


def test_a_sore_claw_of_a_short_foot_is_relieved_and_only_its_partner_may_go_uncut(rules: Module) -> None:
    done, offer = proposed(rules, FootEntry(Foot.LEFT_HIND, wall_mm=70, findings=(ULCER,)))
    assert done == ["relief lateral", "loose_horn lateral"]
    assert offer[:3] == ["block medial rubber", "wrap", "dressing"]
    assert [action for action in offer if action.startswith("no_cut")] == ["no_cut medial"]


def test_a_claw_said_to_need_no_cut_is_not_cut_nor_relieved(rules: Module) -> None:
    foot = FootEntry(
        Foot.LEFT_HIND, findings=(ULCER,), actions=(ActionEntry(ActionKind.NO_CUT, Claw.LATERAL),)
    )
    assert proposed(rules, foot)[0] == INNER_FIRST[:3]
    whole = replace(foot, actions=(ActionEntry(ActionKind.NO_CUT),))
    assert proposed(rules, whole)[0] == []


def test_a_foot_with_a_block_is_offered_no_other(rules: Module) -> None:
    block = ActionEntry(ActionKind.BLOCK, Claw.MEDIAL, BlockKind.SHOE)
    assert proposed(rules, FootEntry(Foot.LEFT_HIND, findings=(ULCER,), actions=(block,)))[1] == [
        "wrap",
        "dressing",
    ]


def test_a_block_from_before_is_first_offered_to_come_off(rules: Module) -> None:
    blocks = [
        {"foot": foot, "claw": "medial", "kind": "wood", "put_on": "2026-03-02"} for foot in ("LH", "RH")
    ]
    assert proposed(rules, FootEntry(Foot.LEFT_HIND), blocks)[1] == ["block_off medial"]


def test_what_is_there_already_is_not_proposed_again(rules: Module) -> None:
    uncut = rules.run("return it.lookedAt(['LH'])[0]")
    answer = rules.run("return it.proposedActions(given[0], given[1])", [uncut, papers()])
    assert answer == {"done": [], "offer": []}


def test_a_plain_trim_and_a_look_are_whole_entries_that_the_server_keeps(rules: Module) -> None:
    feet = rules.run("return it.fourFeet(given)", papers())
    assert [foot["foot"] for foot in feet] == ["LH", "RH", "LF", "RF"]
    assert named(feet[0]["actions"]) == INNER_FIRST
    assert feet[0] == {**on_wire(FootEntry(Foot.LEFT_HIND)), "actions": feet[0]["actions"]}
    looked = rules.run("return it.lookedAt(['LF'])")
    assert named(looked[0]["actions"]) == ["no_cut lateral", "no_cut medial"]


def test_a_business_that_lifts_hind_feet_only_trims_two(rules: Module) -> None:
    two = papers(figures={"trim": on_wire(TrimFigures(feet_lifted=2))})
    assert [foot["foot"] for foot in rules.run("return it.fourFeet(given)", two)] == ["LH", "RH"]


@pytest.mark.parametrize("lesion", LesionCode)
def test_what_is_ticked_after_any_lesion_is_neither_refused_nor_doubted(
    rules: Module, lesion: LesionCode
) -> None:
    claw = Claw.SKIN if LESIONS[lesion].on_skin else Claw.LATERAL
    zone = min(LESIONS[lesion].zones, default=None)
    stage = DDStage.M2 if lesion is LesionCode.DD else None
    for severity in (1, 2, 3):
        foot = FootEntry(Foot.RIGHT_HIND, findings=(FindingEntry(lesion, claw, zone, severity, stage),))
        answer = rules.run("return it.proposedActions(given[0], given[1])", [on_wire(foot), papers()])
        entry = CowEntry(feet=(with_actions(foot, answer["done"]),))
        assert refusals(entry) == []
        assert [doubt.rule for doubt in doubts(entry, TrimFigures())] in ([], ["T9"])


def with_actions(foot: FootEntry, actions: list[dict[str, str]]) -> FootEntry:
    done = [ActionEntry(ActionKind(a["kind"]), Claw(a["claw"]) if a["claw"] else None) for a in actions]
    return replace(foot, actions=tuple(done))
