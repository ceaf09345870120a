from decimal import Decimal as D

import pytest

from invoicing.domain.price_book import PriceBook, Tax
from invoicing.domain.pricing import NoPrice, PriceItem
from tests.invoicing.domain.small_book import book, steps_of

LOW, USUAL = Tax("S", D(5)), Tax("S", D(20))


def test_what_has_no_tax_of_its_own_takes_that_of_the_call_out_else_any():
    prices = {PriceItem.DRESSING: steps_of("4"), PriceItem.CALL_OUT: steps_of("35")}
    both = PriceBook(prices, {PriceItem.DRESSING: LOW, PriceItem.CALL_OUT: USUAL})
    assert both.tax_of(PriceItem.DRESSING) == LOW
    assert both.tax_of(PriceItem.MINIMUM) == USUAL
    assert PriceBook(prices, {PriceItem.DRESSING: LOW}).tax_of(PriceItem.TRAVEL) == LOW
    with pytest.raises(NoPrice, match="empty"):
        PriceBook({}, {}).tax_of(PriceItem.TRAVEL)


def test_steps_of_what_is_on_the_list_and_what_is_not():
    assert book().steps_of(PriceItem.CALL_OUT) == steps_of("35")
    assert book().is_priced(PriceItem.CALL_OUT)
    assert not book().is_priced(PriceItem.SHOE)
    with pytest.raises(NoPrice, match="Shoe"):
        book().steps_of(PriceItem.SHOE)
