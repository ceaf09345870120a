"""A finished visit becomes the draft of an invoice."""

from datetime import UTC, date, datetime, timedelta
from decimal import Decimal

import pytest
from django.db import IntegrityError, transaction

from farms.models import Payer
from invoicing.domain.discount import Discount
from invoicing.domain.pricing import PriceItem
from invoicing.models import (
    BilledWork,
    FarmTerms,
    Invoice,
    InvoiceLine,
    LateWork,
    Price,
    PriceList,
    TaxRate,
)
from invoicing.services.change_line import LineChange, change_line
from invoicing.services.draft_invoice import VisitNotFinished, draft_invoice
from invoicing.services.issue_invoice import issue_invoice
from invoicing.services.make_draft import PriceMissing
from tests.factories import (
    NOON,
    TUESDAY_TEN,
    blocked_foot,
    finish,
    make_cow,
    make_house,
    make_prices,
    put_down,
    trimmed_foot,
    under_way,
)
from tests.invoicing.services.billing import by_month, hand, late_cow, line_of
from tests.invoicing.services.billing import worked as worked_of
from visits.domain.actions import ActionKind
from visits.domain.crush_entry import ActionEntry
from visits.domain.feet import Foot
from visits.domain.visit_states import VisitReason

DRESSED = ActionEntry(ActionKind.DRESSING)


def worked(house, *, start=TUESDAY_TEN, **changes):
    """A corrective cow with a block, a functional one with two dressings, one only looked at."""
    visit = under_way(house.farm, house.van, start, **changes)
    put_down(visit, house.cow, blocked_foot())
    put_down(visit, make_cow(house.farm, "102"), trimmed_foot(Foot.LEFT_HIND, DRESSED, DRESSED))
    put_down(visit, make_cow(house.farm, "103"))
    return finish(visit, house.trimmer)


def lines_of(invoice):
    rows = InvoiceLine.objects.within(invoice.scope).filter(invoice=invoice)
    return {row.item: (row.quantity, row.net) for row in rows}


def test_each_thing_done_is_a_line_at_the_price_of_the_list(house):
    make_prices(house.business, functional="9.50", corrective="14", block="11.25", call_out="35")
    invoice = draft_invoice(visit=worked(house), at=NOON)
    assert lines_of(invoice) == {
        "functional": (1, Decimal("9.50")),
        "corrective": (1, Decimal("14.00")),
        "check": (1, Decimal("10.00")),
        "block": (1, Decimal("11.25")),
        "dressing": (2, Decimal("20.00")),
        "call_out": (1, Decimal("35.00")),
    }
    assert (invoice.state, invoice.number, invoice.farm, invoice.currency) == ("draft", "", house.farm, "GBP")
    assert invoice.tax_point == TUESDAY_TEN.date()


def test_tax_is_reckoned_per_rate_on_the_summed_net_and_rounded_once(house):
    make_prices(house.business, functional="9.99", corrective="14.33", block="0", check="0", dressing="1.01")
    invoice = draft_invoice(visit=worked(house), at=NOON)
    # at 20 %: 9.99 + 14.33 + 10.00 = 34.32, tax 6.864; at 5 %: 2.02, tax 0.101 (BR-CO-17, EN 16931)
    assert invoice.net == Decimal("36.34")
    assert invoice.tax == Decimal("6.86") + Decimal("0.10")
    assert invoice.gross == invoice.net + invoice.tax


def test_an_urgent_visit_carries_its_supplement(house):
    make_prices(house.business, urgent="25")
    invoice = draft_invoice(visit=worked(house, reason=VisitReason.URGENT), at=NOON)
    assert lines_of(invoice)["urgent"] == (1, Decimal("25.00"))


def test_what_costs_nothing_is_not_billed(house):
    make_prices(house.business, check="0", call_out="0")
    assert {"check", "call_out"}.isdisjoint(lines_of(draft_invoice(visit=worked(house), at=NOON)))


def test_the_prices_of_the_day_of_the_work_hold_whenever_it_is_drafted(house):
    make_prices(house.business)
    dear = PriceList.objects.create(business=house.business, name="Later", valid_from=date(2026, 3, 4))
    for item in PriceItem:
        Price.objects.create(
            business=house.business, price_list=dear, item=item, unit_price=99, tax_code="usual"
        )
    TaxRate.objects.create(
        business=house.business, code="usual", category="S", percent=25, valid_from=date(2026, 3, 4)
    )
    invoice = draft_invoice(visit=worked(house), at=NOON + timedelta(days=30))
    assert lines_of(invoice)["functional"] == (1, Decimal("10.00"))
    row = InvoiceLine.objects.within(house.scope).get(invoice=invoice, item="functional")
    assert row.tax_percent == Decimal(20)


def test_the_day_of_the_work_is_the_day_in_the_zone_of_the_business(house):
    house.business.timezone = "Pacific/Auckland"
    house.business.save()
    make_prices(house.business)
    visit = worked(house, start=datetime(2026, 3, 3, 20, tzinfo=UTC))  # the 4th in Auckland
    assert draft_invoice(visit=visit, at=NOON).tax_point == date(2026, 3, 4)


def test_drafting_again_makes_the_same_draft_anew(house):
    make_prices(house.business)
    visit = worked(house)
    first = draft_invoice(visit=visit, at=NOON)
    Price.objects.within(house.scope).filter(item="functional").update(unit_price=20)
    second = draft_invoice(visit=visit, at=NOON)
    assert second.pk == first.pk
    assert Invoice.objects.within(house.scope).count() == 1
    assert second.net == first.net + 10
    positions = InvoiceLine.objects.within(house.scope).values_list("position", flat=True)
    assert list(positions) == list(range(1, len(positions) + 1))


def test_an_issued_invoice_is_left_as_it_is(house):
    make_prices(house.business)
    visit = worked(house)
    issued = issue_invoice(invoice=draft_invoice(visit=visit, at=NOON), at=NOON, by=house.owner)
    Price.objects.within(house.scope).update(unit_price=99)
    before = Invoice.objects.within(house.scope).values().get()
    assert draft_invoice(visit=visit, at=NOON).pk == issued.pk
    assert Invoice.objects.within(house.scope).values().get() == before


def test_a_visit_on_which_nothing_was_done_is_not_billed(house):
    make_prices(house.business)
    visit = finish(under_way(house.farm, house.van), house.trimmer)
    assert draft_invoice(visit=visit, at=NOON) is None
    assert not Invoice.objects.within(house.scope).exists()


def test_a_draft_whose_work_has_come_to_cost_nothing_falls_away(house):
    make_prices(house.business)
    visit = worked(house)
    draft_invoice(visit=visit, at=NOON)
    Price.objects.within(house.scope).update(unit_price=0)
    assert draft_invoice(visit=visit, at=NOON) is None
    assert not Invoice.objects.within(house.scope).exists()


def test_unfinished_work_is_not_billed(house):
    make_prices(house.business)
    with pytest.raises(VisitNotFinished):
        draft_invoice(visit=under_way(house.farm, house.van), at=NOON)


def test_without_a_price_list_the_draft_is_refused_with_the_day(house):
    with pytest.raises(PriceMissing, match="No price list holds on 3 March 2026"):
        draft_invoice(visit=worked(house), at=NOON)


def test_a_missing_price_is_named_and_nothing_is_drafted(house):
    make_prices(house.business)
    Price.objects.within(house.scope).filter(item="block").delete()
    with pytest.raises(PriceMissing, match="“Block”"):
        draft_invoice(visit=worked(house), at=NOON)
    assert not Invoice.objects.within(house.scope).exists()


def test_a_missing_tax_rate_is_named(house):
    make_prices(house.business)
    TaxRate.objects.within(house.scope).filter(code="low").delete()
    with pytest.raises(PriceMissing, match="“low”"):
        draft_invoice(visit=worked(house), at=NOON)


def test_another_businesss_prices_are_not_looked_at(house):
    make_prices(make_house("Fell & Beck").business)
    with pytest.raises(PriceMissing):
        draft_invoice(visit=worked(house), at=NOON)


def test_each_line_holds_the_work_it_bills_and_nothing_is_held_twice(house):
    make_prices(house.business)
    visit = worked(house)
    invoice = draft_invoice(visit=visit, at=NOON)
    claims = BilledWork.objects.within(house.scope).filter(invoice=invoice)
    keys = {row.key for row in claims}
    assert len(keys) == len(claims) == 3 + 1 + 2 + 1
    assert f"visit/{visit.uid}/call_out" in keys
    words = {row.words for row in claims}
    assert "cow 101: Block, left hind, inner claw" in words
    with pytest.raises(IntegrityError), transaction.atomic():
        row = claims[0]
        BilledWork.objects.create(
            business=house.business, invoice=invoice, line=row.line, visit=visit, key=row.key
        )


def test_late_cows_come_onto_a_draft_by_themselves(house):
    make_prices(house.business)
    visit = worked(house)
    draft_invoice(visit=visit, at=NOON)
    late_cow(house, visit)
    invoice = draft_invoice(visit=visit, at=NOON)
    assert lines_of(invoice)["functional"] == (2, Decimal("20.00"))
    assert not LateWork.objects.within(house.scope).exists()


def test_what_the_office_changed_stays_with_its_work_when_drafted_again(house):
    make_prices(house.business)
    visit = worked(house)
    invoice = draft_invoice(visit=visit, at=NOON)
    block = line_of(invoice, "block")
    change = LineChange("Block, put on again", block.quantity, Discount(percent=Decimal(50)))
    change_line(line=block, change=change, hand=hand(house))
    late_cow(house, visit)
    Price.objects.within(house.scope).update(unit_price=20)
    again = draft_invoice(visit=visit, at=NOON)
    assert lines_of(again)["block"] == (1, Decimal("5.00"))
    assert lines_of(again)["functional"] == (2, Decimal("40.00"))
    assert again.line_sum == sum(net for _, net in lines_of(again).values())


def test_late_work_on_an_issued_invoice_is_noted_and_nothing_is_drafted(house):
    make_prices(house.business)
    visit = worked(house)
    issued = issue_invoice(invoice=draft_invoice(visit=visit, at=NOON), at=NOON, by=house.owner)
    late_cow(house, visit)
    assert draft_invoice(visit=visit, at=NOON) == issued
    late = LateWork.objects.within(house.scope).get()
    assert (late.visit_id, late.added, late.gone) == (visit.pk, 1, 0)
    assert Invoice.objects.within(house.scope).count() == 1


def test_a_farm_billed_by_the_month_gets_one_draft_for_it(house):
    make_prices(house.business)
    by_month(house.farm)
    first = draft_invoice(visit=worked(house), at=NOON)
    second = draft_invoice(visit=worked_of(house, days=7), at=NOON)
    assert (first.pk, first.visit) == (second.pk, None)
    assert (second.period_from, second.period_until) == (date(2026, 3, 1), date(2026, 3, 31))
    assert second.tax_point == date(2026, 3, 10)
    days = InvoiceLine.objects.within(house.scope).order_by("position").values_list("done_on", flat=True)
    assert list(dict.fromkeys(days)) == [date(2026, 3, 3), date(2026, 3, 10)]


def test_payer_and_order_number_come_onto_the_draft(house):
    make_prices(house.business)
    house.farm.payer = Payer.objects.create(business=house.business, name="The Estate")
    house.farm.save()
    FarmTerms.objects.create(business=house.business, farm=house.farm, order_number="PO 7")
    invoice = draft_invoice(visit=worked(house), at=NOON)
    assert (invoice.payer, invoice.order_number) == (house.farm.payer, "PO 7")
