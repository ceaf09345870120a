from datetime import timedelta
from decimal import Decimal
from uuid import uuid4

from tests.factories import (
    NOON,
    TUESDAY_TEN,
    blocked_foot,
    finish,
    make_consumable,
    make_kit,
    put_down,
    under_way,
)
from visits.domain.actions import ActionKind
from visits.domain.cautions import MEDICINES
from visits.domain.crush_entry import ActionEntry, FindingEntry, FootEntry
from visits.domain.feet import Claw, Foot
from visits.domain.kit.stock_kinds import ConsumableKind, MovementKind, UseOf, UsePer
from visits.domain.kit.use_rules import Recipe
from visits.domain.lesions import LesionCode
from visits.models import StockMovement, WashDown
from visits.selectors.report_content import report_content
from visits.selectors.report_end import told_lines
from visits.services.kit.stock_place import store_of


def report_of(house, *, wash=False, **words):
    visit = under_way(house.farm, house.van)
    put_down(visit, house.cow, blocked_foot(for_vet="hot above the horn"), for_vet="eats little")
    if wash:
        WashDown.objects.create(
            business=house.business,
            visit=visit,
            record=uuid4(),
            substance="peracetic acid",
            dilution="1:100",
            contact_minutes=Decimal("10.0"),
            washed_at=TUESDAY_TEN + timedelta(hours=2),
            by=house.trimmer,
        )
    visit = finish(visit, house.trimmer)
    for name, value in words.items():
        setattr(visit, name, value)
    return report_content(visit)


def test_what_the_trimmer_leaves_to_the_vet_stands_with_what_the_rule_finds(house):
    assert [(line.foot, line.seen) for line in report_of(house).vet] == [
        ("LH", "hot above the horn"),
        (None, "eats little"),
    ]


def test_a_wash_down_names_its_product_strength_time_and_hour(house):
    first, *usual = report_of(house, wash=True).hygiene_steps
    assert first.words == "Disinfected with peracetic acid, 1:100, left on for 10 min"
    assert (first.done, f"{first.at:%H:%M}") == (True, "12:00")
    assert all(step.done for step in usual)


def test_what_was_not_washed_is_not_hidden(house):
    assert not any(step.done for step in report_of(house, washed_down=False).hygiene_steps)


def test_the_words_of_the_sign_off_are_told_without_the_cautions_printed_anyway(house):
    report = report_of(house, was_done="12 cows.\n", farm_to_do=f"Foot bath on Friday.\n\n{MEDICINES}")
    assert report.was_done == ("12 cows.",)
    assert report.farm_to_do == ("Foot bath on Friday.",)
    assert told_lines("") == ()


def test_what_was_used_counts_the_correction_by_hand(house):
    kit = make_kit(house.business)
    report = report_of(house)
    assert [(item.name, item.quantity) for item in report.consumables] == [
        ("Glue", Decimal(25)),
        ("Wooden block", Decimal(1)),
    ]
    visit = house.farm.visits.within(house.scope).get()
    StockMovement.objects.create(
        business=house.business,
        consumable=kit["wood"],
        visit=visit,
        place=store_of(house.scope),
        kind=MovementKind.USED,
        use_of=UseOf.BY_HAND,
        noted_at=NOON,
        quantity=Decimal(-2),
        at=NOON,
    )
    assert report_content(visit).consumables[1].quantity == 3


def test_gloves_and_discs_are_no_business_of_the_farm(house):
    make_kit(house.business)
    make_consumable(house.business, "Gloves", ConsumableKind.GLOVES, Recipe(UsePer.COW, Decimal(1)))
    assert [item.name for item in report_of(house).consumables] == ["Glue", "Wooden block"]


def test_blocks_are_told_with_the_day_by_which_they_come_off(house):
    (block,) = report_of(house).blocks
    assert (block.cow, f"{block.off_by:%d %b}") == ("101", "31 Mar")


def test_a_foot_that_was_not_cut_is_not_called_trimmed(house):
    uncut = FootEntry(
        Foot.LEFT_HIND,
        sensitive_tissue=True,
        findings=(FindingEntry(LesionCode.TU, Claw.LATERAL, 1, 3),),
        actions=(ActionEntry(ActionKind.NO_CUT),),
    )
    visit = under_way(house.farm, house.van)
    put_down(visit, house.cow, uncut, FootEntry(Foot.RIGHT_HIND))
    (cow,) = report_content(finish(visit, house.trimmer)).cows
    assert [(foot.foot, foot.done) for foot in cow.feet] == [("LH", ("no cut needed",))]
