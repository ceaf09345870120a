"""What was pasted into a draft, and currencies without or with three decimals, up to the issued papers."""

from decimal import Decimal

import pytest
from lxml import etree
from pypdfium2 import PdfDocument

from invoicing.documents.invoice_check import InvoiceIncomplete
from invoicing.models import Invoice, NumberSeries, TaxRate
from invoicing.services.add_line import HandLine, add_line
from invoicing.services.change_draft_head import DraftHead, change_draft_head
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.issue_invoice import issue_invoice
from tests.factories import NOON, make_house, make_prices
from tests.invoicing.services.billing import hand, worked

LAND = {"GBP": "GB", "JPY": "JP", "BHD": "BH"}
PASTED = "a\x0bb\x01 x\u202ey <img src='file:///etc/passwd'/>&amp; =1+1"


def drafted(currency="GBP"):
    house = make_house()
    house.business.currency, house.business.country = currency, LAND[currency]
    house.business.save()
    make_prices(house.business)
    return house, draft_invoice(visit=worked(house, 1), at=NOON)


def with_line(house, draft, description, price="5"):
    rate = TaxRate.objects.within(house.scope).first()
    line = HandLine(description, Decimal(1), Decimal(price), rate)
    return add_line(invoice=draft, line=line, hand=hand(house))


def words_of(pdf):
    return "\n".join(page.get_textpage().get_text_range() for page in PdfDocument(bytes(pdf)))


@pytest.mark.django_db
def test_what_was_pasted_is_printed_as_it_stands_and_asks_for_no_file():
    house, draft = drafted()
    issued = issue_invoice(invoice=with_line(house, draft, PASTED), at=NOON, by=house.owner)
    assert "<img src='file:///etc/passwd'/>&amp;" in words_of(issued.papers.pdf).replace("\r\n", " ")
    for xml in (issued.papers.cii, issued.papers.ubl):
        words = " ".join(etree.fromstring(bytes(xml)).itertext())
        assert "<img src='file:///etc/passwd'/>&amp; =1+1" in words


@pytest.mark.django_db
def test_a_sign_that_cannot_be_printed_is_told_and_takes_no_number():
    house, draft = drafted()
    draft = with_line(house, draft, "Trim of the \U0001f404 of the year")
    with pytest.raises(InvoiceIncomplete, match=r"“Trim of the .* cannot print"):
        issue_invoice(invoice=draft, at=NOON, by=house.owner)
    assert not NumberSeries.objects.within(house.scope).filter(last__gt=0).exists()


@pytest.mark.django_db
@pytest.mark.parametrize(
    ("currency", "price", "printed", "in_xml"),
    [("JPY", "1234.5", ("1,235", "1,332"), "1332"), ("BHD", "1.2345", ("1.235", "36.297"), None)],
)
def test_decimals_of_the_currency_from_the_draft_to_the_papers(currency, price, printed, in_xml):
    """10 x 3 at 20 percent and `price` at 5, less 1 paid before. No e-invoice takes three decimals: that is said."""
    house, draft = drafted(currency)
    draft = with_line(house, draft, "Extra", price)
    draft = change_draft_head(invoice=draft, head=DraftHead("", "", "", Decimal(1)), hand=hand(house))
    papers = issue_invoice(invoice=draft, at=NOON, by=house.owner).papers
    assert all(amount in words_of(papers.pdf) for amount in printed)
    if in_xml is None:
        assert (bytes(papers.ubl), "3 decimals" in papers.no_xml_because) == (b"", True)
    else:
        due = etree.fromstring(bytes(papers.ubl)).find(".//{*}PayableAmount")
        assert (due.text, due.get("currencyID")) == (in_xml, currency)


@pytest.mark.django_db
def test_the_third_decimal_is_a_change_too():
    house, draft = drafted("BHD")
    for paid in ("1.121", "1.124"):
        draft = change_draft_head(invoice=draft, head=DraftHead("", "", "", Decimal(paid)), hand=hand(house))
        assert Invoice.objects.within(house.scope).get(pk=draft.pk).prepaid == Decimal(paid)
