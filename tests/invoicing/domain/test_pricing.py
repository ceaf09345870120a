from decimal import Decimal as D

import pytest

from invoicing.domain.pricing import NoPrice, PricedItem, PriceItem, WorkDone, draft_lines

PRICES = {
    PriceItem.FUNCTIONAL: PricedItem(D("13.50"), "S", D(20)),
    PriceItem.BLOCK: PricedItem(D("12.00"), "S", D(20)),
    PriceItem.CHECK: PricedItem(D(0), "S", D(20)),
    PriceItem.KILOMETRE: PricedItem(D("0.45"), "S", D(20)),
}


def _work(**counts):
    items = {PriceItem(name): D(count) for name, count in counts.items()}
    return WorkDone(items, {item: f"{count} seen at the visit" for item, count in items.items()})


def test_each_thing_done_becomes_a_line_with_its_price_and_reason():
    lines = draft_lines(_work(kilometre="18.4", block="2", functional="24"), PRICES)
    assert [(line.item.value, line.quantity, line.unit_price) for line in lines] == [
        ("functional", D(24), D("13.50")),
        ("block", D(2), D("12.00")),
        ("kilometre", D("18.4"), D("0.45")),
    ]
    assert lines[0].why == "24 seen at the visit"
    assert [line.unit for line in lines] == ["C62", "C62", "KMT"]


def test_what_was_not_done_and_what_costs_nothing_is_not_billed():
    assert draft_lines(_work(block="0", check="3"), PRICES) == []


def test_work_without_a_price_stops_the_draft_and_is_named():
    with pytest.raises(NoPrice, match="Shoe"):
        draft_lines(_work(functional="3", shoe="1"), PRICES)


def test_every_item_of_a_price_list_has_words_and_a_unit():
    travel = {PriceItem.KILOMETRE, PriceItem.MILE, PriceItem.TRAVEL}
    assert len({item.label for item in PriceItem}) == len(PriceItem) - len(travel) + 1
    assert {item.unit for item in PriceItem} == {"C62", "KMT", "SMI"}
