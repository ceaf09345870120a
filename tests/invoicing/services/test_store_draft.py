"""Lines of the work and lines by hand, in one order."""

from datetime import date
from decimal import Decimal as D

from invoicing.domain.pricing import DraftLine, PriceItem
from invoicing.domain.visit_work import WorkPiece
from invoicing.models import BilledWork, DocumentAmount, Invoice, InvoiceLine
from invoicing.selectors.draft_work import PricedWork
from invoicing.services.store_draft import store_draft
from tests.factories import NOON, planned
from tests.invoicing.drafts import plain_draft


def work(visit, *items):
    lines = tuple(
        DraftLine(
            item,
            item.label,
            D(1),
            "C62",
            D(5),
            "S",
            D(20),
            "why",
            visit_id=visit.pk,
            done_on=date(2026, 3, 3),
        )
        for item in items
    )
    return PricedWork(lines, {})


def test_fresh_lines_come_before_what_stands_by_hand_and_old_ones_go(house):
    visit, draft = planned(house.farm, house.van), plain_draft(house)
    InvoiceLine.objects.within(house.scope).filter(invoice=draft).update(is_by_hand=True, item="other")
    store_draft(invoice=draft, work=work(visit, PriceItem.BLOCK), at=NOON)
    store_draft(invoice=draft, work=work(visit, PriceItem.CHECK, PriceItem.BLOCK), at=NOON)
    rows = InvoiceLine.objects.within(house.scope).filter(invoice=draft).order_by("position")
    assert [(row.position, row.item) for row in rows] == [(1, "check"), (2, "block"), (3, "other")]
    assert draft.net == 20


def test_each_key_is_held_once_with_its_words(house):
    visit, draft = planned(house.farm, house.van), plain_draft(house)
    priced = work(visit, PriceItem.BLOCK)
    line = type(priced.lines[0])(**{**priced.lines[0].__dict__, "keys": ("k", "k", "l")})
    pieces = {"k": WorkPiece("k", PriceItem.BLOCK, None, "cow 7", "LH")}
    store_draft(invoice=draft, work=PricedWork((line,), pieces), at=NOON)
    claims = BilledWork.objects.within(house.scope).order_by("key")
    assert [(row.key, row.words) for row in claims] == [("k", "cow 7: Block, left hind"), ("l", "Block")]


def test_a_draft_that_comes_to_hold_nothing_falls_away(house):
    draft = plain_draft(house)
    assert store_draft(invoice=draft, work=PricedWork((), {}), at=NOON) is None
    assert not Invoice.objects.within(house.scope).exists()


def test_a_discount_by_amount_is_cut_to_what_there_is(house):
    visit, draft = planned(house.farm, house.van), plain_draft(house)
    InvoiceLine.objects.within(house.scope).filter(invoice=draft).update(is_by_hand=False)
    for amount, percent in (("12", "20"), ("3", "20"), ("1", "5")):
        DocumentAmount.objects.create(
            business=house.business,
            invoice=draft,
            amount=D(amount),
            reason=f"Off {amount}",
            tax_category="S",
            tax_percent=D(percent),
        )
    after = store_draft(
        invoice=draft, work=work(visit, PriceItem.CHECK, PriceItem.BLOCK, PriceItem.WRAP), at=NOON
    )
    left = DocumentAmount.objects.within(house.scope).filter(invoice=draft)
    assert [(row.reason, row.amount) for row in left] == [("Off 12", 12), ("Off 3", 3)]
    assert (after.line_sum, after.net) == (15, 0)
    store_draft(invoice=after, work=work(visit, PriceItem.CHECK), at=NOON)
    assert [(row.reason, row.amount) for row in left.all()] == [("Off 12", 5)]
