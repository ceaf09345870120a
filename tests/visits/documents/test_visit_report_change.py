from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest

from visits.documents.visit_report_change import change_note, report_changes
from visits.documents.visit_report_content import (
    Comparison,
    Consumable,
    CowLine,
    FootLine,
    Found,
    HygieneStep,
    VetReferral,
)
from visits.domain.feet import Claw, Foot

ULCER = Found("sole ulcer", Claw.LATERAL, 4, "where sole meets heel", 2)
PLAIN = CowLine("412", "functional trim")
SORE = CowLine("412", "corrective trim", (FootLine(Foot.LEFT_HIND, (ULCER,), ("weight taken off",)),))


@pytest.fixture
def report(make_report):
    return make_report(3, cows=(PLAIN,), blocks=(), vet=(), consumables=(), hygiene_steps=())


def test_the_same_report_changes_nothing(make_report):
    assert report_changes(make_report(30), make_report(30)) == ()


def test_what_lies_round_the_visit_is_not_held_against_it(make_report):
    later = {
        "made_at": make_report(1).finished,
        "version": 2,
        "next_visit": "another day",
        "compared": (Comparison("x", 1),),
        "findings": (),
        "herd_size": 9,
        "farm_name": "Another",
        "to_do": (),
        "round_note": "With others.",
    }
    assert report_changes(make_report(30), make_report(30, **later)) == ()


def test_who_comes_for_a_block_may_change_without_a_new_version(make_report):
    report = make_report(30)
    blocks = tuple(replace(block, who="we come Tue 29 Dec, 09:40") for block in report.blocks)
    assert report_changes(report, replace(report, blocks=blocks)) == ()


@pytest.mark.parametrize(
    ("before", "after", "words"),
    [
        ((), (PLAIN,), ("cow 412 added",)),
        ((PLAIN,), (), ("cow 412 taken out",)),
        (
            (PLAIN,),
            (SORE,),
            (
                "cow 412: sole ulcer (2 of 3), outer claw, zone 4 added on left hind",
                "cow 412: left hind also: weight taken off",
                "cow 412: corrective trim instead of functional trim",
            ),
        ),
        (
            (SORE,),
            (replace(SORE, feet=(replace(SORE.feet[0], found=(replace(ULCER, severity=3),)),)),),
            ("cow 412: sole ulcer (3 of 3), outer claw, zone 4 on left hind, instead of 2 of 3",),
        ),
        (
            (SORE,),
            (replace(SORE, feet=(replace(SORE.feet[0], found=()),)),),
            ("cow 412: sole ulcer (2 of 3), outer claw, zone 4 taken out on left hind",),
        ),
        ((PLAIN,), (replace(PLAIN, note="kicks"),), ("cow 412: note “kicks”",)),
        ((replace(PLAIN, note="kicks"),), (PLAIN,), ("cow 412: note taken out",)),
        (
            (PLAIN,),
            (replace(PLAIN, walked="2, UK 0 to 3"),),
            ("cow 412: lame, 2, UK 0 to 3 instead of no",),
        ),
    ],
)
def test_cows_are_told_by_number_foot_and_lesion(report, before, after, words):
    assert report_changes(replace(report, cows=before), replace(report, cows=after)) == words


def test_a_block_is_told_by_its_claw_and_a_re_check_by_its_day(report):
    blocked = FootLine(
        Foot.LEFT_HIND, (ULCER,), ("weight taken off", "wooden block on"), Claw.MEDIAL, date(2026, 3, 31)
    )
    after = replace(report, cows=(replace(SORE, feet=(blocked,)),))
    assert report_changes(replace(report, cows=(SORE,)), after) == (
        "cow 412: block on left hind, inner claw",
        "cow 412: left hind to be looked at by 31 Mar",
    )


def test_two_cows_of_one_number_are_both_told(report):
    assert report_changes(report, replace(report, cows=(PLAIN, PLAIN))) == ("cow 412 (another) added",)


def test_the_vet_s_part_tells_who_is_new_who_is_gone_and_who_was_told(report):
    line = VetReferral("7", Foot.LEFT_HIND, "dead toe")
    with_it = replace(report, vet=(line,))
    assert report_changes(report, with_it) == ("for the vet: cow 7 added (dead toe)",)
    assert report_changes(with_it, report) == ("for the vet: cow 7 taken out (dead toe)",)
    told = replace(report, vet=(replace(line, told="Told J. Marsden 10:20."),))
    assert report_changes(with_it, told) == ("cow 7: told J. Marsden 10:20",)
    assert report_changes(told, with_it) == ("cow 7: nobody is noted as told",)


def test_blocks_are_counted_and_a_moved_day_is_told(make_report):
    report = make_report(30)
    assert report_changes(report, replace(report, blocks=report.blocks[1:])) == (
        "block count 2 instead of 3",
    )
    moved = (replace(report.blocks[0], off_by=date(2026, 12, 20)), *report.blocks[1:])
    assert report_changes(report, replace(report, blocks=moved)) == (
        "cow 400: block off by 20 Dec instead of 29 Dec",
    )


def test_the_end_of_the_visit_is_compared_too(report):
    after = replace(
        report,
        consumables=(Consumable("wooden blocks", Decimal(3)),),
        hygiene_steps=(HygieneStep("boots", done=False),),
        signed=(),
        was_done=("x" * 200,),
    )
    used, hygiene, received, told = report_changes(report, after)
    assert used == "what was used: 3 wooden blocks instead of nothing"
    assert hygiene == "hygiene: boots (not done) instead of nothing"
    assert received == "received by: nothing instead of Ann Brook, J. Marsden"
    assert told == "told at the end"


def test_a_long_list_is_cut_and_says_how_much_is_left():
    assert change_note(["a", "b"]) == "a; b"
    assert change_note([str(n) for n in range(14)]).endswith("; 11; and 2 more changes")
