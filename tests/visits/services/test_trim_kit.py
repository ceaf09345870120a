"""What a cow used up stands in the stock ledger."""

from datetime import timedelta
from decimal import Decimal

from django.db.models import Sum

from tests.factories import blocked_foot, make_house, make_kit, put_down, trimmed_foot
from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_entry import ActionEntry
from visits.domain.feet import Foot
from visits.models import StockMovement

WRAP = ActionEntry(ActionKind.WRAP)


def ledger(house):
    rows = StockMovement.objects.within(house.scope).select_related("consumable")
    return [(row.consumable.name, row.quantity) for row in rows.order_by("pk")]


def used(house):
    rows = StockMovement.objects.within(house.scope).values("consumable__name").order_by("consumable__name")
    return {row["consumable__name"]: -row["sum"] for row in rows.annotate(sum=Sum("quantity"))}


def test_a_block_takes_itself_and_its_glue_from_the_van(house, visit):
    make_kit(house.business)
    trim = put_down(visit, house.cow, blocked_foot())
    assert sorted(ledger(house)) == [("Glue", Decimal(-25)), ("Wooden block", Decimal(-1))]
    movement = StockMovement.objects.within(house.scope).first()
    assert (movement.van, movement.kind, movement.trim) == (house.van, "used", trim)


def test_a_block_of_another_kind_takes_only_the_glue(house, visit):
    make_kit(house.business)
    put_down(visit, house.cow, blocked_foot(kind=BlockKind.RUBBER))
    assert ledger(house) == [("Glue", Decimal(-25))]


def test_two_wraps_are_two(house, visit):
    make_kit(house.business)
    put_down(visit, house.cow, trimmed_foot(Foot.LEFT_HIND, WRAP), trimmed_foot(Foot.RIGHT_HIND, WRAP))
    assert ledger(house) == [("Wrap", Decimal(-2))]


def test_mending_a_trim_adds_what_differs_and_changes_no_line(house, visit):
    make_kit(house.business)
    put_down(visit, house.cow, blocked_foot())
    before = ledger(house)
    put_down(visit, house.cow, trimmed_foot(Foot.LEFT_HIND, WRAP), at=visit.started_at + timedelta(hours=1))
    assert ledger(house)[:2] == before
    assert used(house) == {"Glue": 0, "Wooden block": 0, "Wrap": 1}


def test_mending_only_a_word_adds_no_line(house, visit):
    make_kit(house.business)
    put_down(visit, house.cow, blocked_foot())
    put_down(visit, house.cow, blocked_foot(), note="Quiet", at=visit.started_at + timedelta(hours=1))
    assert used(house) == {"Glue": 25, "Wooden block": 1}
    assert len(ledger(house)) == 2


def test_a_plain_trim_uses_nothing(house, visit):
    make_kit(house.business)
    put_down(visit, house.cow, trimmed_foot())
    assert ledger(house) == []


def test_another_businesss_kit_is_not_touched(house, visit):
    theirs = make_house("Fell & Beck")
    make_kit(theirs.business)
    put_down(visit, house.cow, blocked_foot())
    assert ledger(house) == ledger(theirs) == []
