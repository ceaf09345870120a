"""What a cow used up stands in the stock ledger."""

from datetime import timedelta
from decimal import Decimal

from django.db.models import Sum

from tests.factories import (
    TUESDAY_TEN,
    blocked_foot,
    make_cow,
    make_house,
    make_kit,
    make_van,
    put_down,
    trimmed_foot,
)
from tests.visits.api.phone import blocked, cow_content
from tests.visits.services.sendings import HOUR, made, phone_at, send
from visits.domain.actions import ActionKind, BlockKind
from visits.domain.crush_entry import ActionEntry
from visits.domain.feet import Foot
from visits.models import StockMovement, UseRule, Visit

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
    assert (movement.place.van, movement.kind, movement.trim) == (house.van, "used", trim)


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


def test_a_recipe_changed_since_does_not_rewrite_what_was_booked(house, visit):
    """Her note is mended the day after: yesterday's glue was used as it was used."""
    kit = make_kit(house.business)
    put_down(visit, house.cow, blocked_foot())
    UseRule.objects.within(house.scope).filter(consumable=kit["glue"]).update(quantity=40)
    put_down(visit, house.cow, blocked_foot(), note="Quiet", at=visit.started_at + timedelta(days=1))
    assert used(house) == {"Glue": 25, "Wooden block": 1}
    assert len(ledger(house)) == 2


def test_one_block_more_goes_by_the_recipe_of_her_day_and_another_cow_by_that_of_now(house, visit):
    kit = make_kit(house.business)
    put_down(visit, house.cow, blocked_foot())
    UseRule.objects.within(house.scope).filter(consumable=kit["glue"]).update(quantity=40)
    later = visit.started_at + timedelta(days=1)
    put_down(visit, house.cow, blocked_foot(), blocked_foot(Foot.RIGHT_HIND), at=later)
    assert used(house)["Glue"] == 50
    put_down(visit, make_cow(house.farm, "102"), blocked_foot(), at=later)
    assert used(house)["Glue"] == 90


def test_what_was_taken_out_of_use_since_stays_booked(house, visit):
    kit = make_kit(house.business)
    put_down(visit, house.cow, blocked_foot())
    kit["glue"].is_active = False
    kit["glue"].save()
    put_down(visit, house.cow, blocked_foot(), note="Quiet", at=visit.started_at + timedelta(days=1))
    assert used(house)["Glue"] == 25


def test_a_line_tells_its_recipe_and_when_it_was_heard(house, visit):
    make_kit(house.business)
    at = visit.started_at + timedelta(minutes=5)
    put_down(visit, house.cow, blocked_foot(), at=at)
    line = StockMovement.objects.within(house.scope).get(consumable__name="Glue")
    assert (line.note, line.at, line.noted_at) == ("25 per block", at, at)


def test_a_cow_taken_back_gives_back_all_she_used(house, visit):
    make_kit(house.business)
    phone = phone_at(visit)
    sent = phone.write(cow_content(house.cow.pk, blocked()), **made(TUESDAY_TEN))
    send(phone, house, TUESDAY_TEN)
    UseRule.objects.within(house.scope).delete()
    phone.undo(sent)
    send(phone, house, TUESDAY_TEN + HOUR)
    assert used(house) == {"Glue": 0, "Wooden block": 0}
    assert StockMovement.objects.within(house.scope).last().noted_at == TUESDAY_TEN + HOUR


def test_a_visit_that_another_van_did_takes_it_from_that_van(house, visit):
    make_kit(house.business)
    put_down(visit, house.cow, blocked_foot())
    other = make_van(house.business, house.owner, "Van 2")
    Visit.objects.within(house.scope).filter(pk=visit.pk).update(van=other)
    visit.refresh_from_db()
    put_down(visit, house.cow, blocked_foot(), note="Quiet", at=visit.started_at + timedelta(hours=1))
    left = StockMovement.objects.within(house.scope).filter(consumable__name="Glue")
    by_van = dict(left.values_list("place__van__name").annotate(Sum("quantity")).order_by())
    assert by_van == {"Van 1": 0, "Van 2": -25}


def test_a_plain_trim_uses_nothing(house, visit):
    make_kit(house.business)
    put_down(visit, house.cow, trimmed_foot())
    assert ledger(house) == []


def test_another_businesss_kit_is_not_touched(house, visit):
    theirs = make_house("Fell & Beck")
    make_kit(theirs.business)
    put_down(visit, house.cow, blocked_foot())
    assert ledger(house) == ledger(theirs) == []
