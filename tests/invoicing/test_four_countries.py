"""What an invoice must say in its case: Irish euro, German reverse charge and small business, yen, foreign currency.

Contents by Directive 2006/112/EC art. 226 and 230 and the VAT Regulations 1995 reg 14(1), from memory.
"""

from decimal import Decimal as D
from io import BytesIO

import pytest
from lxml import etree
from pypdf import PdfReader

from farms.models import Payer
from invoicing.documents.e_invoice_reading import amounts_of
from invoicing.documents.invoice_check import InvoiceIncomplete
from invoicing.domain.tax_periods import year_of
from invoicing.models import FarmTerms, MoneyRules, Price, TaxRate
from invoicing.selectors.sales_journal import sales_journal
from invoicing.services.change_draft_head import DraftHead, change_draft_head
from tests.factories import make_house, make_prices
from tests.invoicing.money_year import MoneyYear, at, day
from tests.invoicing.tax_summary import tax_summary


def office(currency, country, number, percent, zone, **rules):
    house = make_house()
    business = house.business
    business.currency, business.country, business.vat_number = currency, country, number
    business.timezone = zone
    business.save()
    make_prices(business, percent, functional="33.33", block="14.25")
    MoneyRules.objects.create(business=business, **rules)
    return MoneyYear(house)


def taxed(year, code, **rate):
    """All that is done for the farm is at this rate."""
    business = year.house.business
    TaxRate.objects.create(business=business, code=code, percent=0, valid_from=day(1, 1), **rate)
    FarmTerms.objects.create(business=business, farm=year.house.farm, tax_code=code)


def words_of(invoice):
    pages = PdfReader(BytesIO(bytes(invoice.papers.pdf))).pages
    return " ".join(" ".join(page.extract_text() for page in pages).split())


def read(invoice):
    assert invoice.papers.no_xml_because == ""
    return amounts_of(etree.fromstring(bytes(invoice.papers.ubl)))


def test_ireland_in_euro(db):
    iban = "IE29AIBK93115212345678"
    year = office("EUR", "IE", "IE6388047V", "23", "Europe/Dublin", iban=iban)
    invoice = year.bill(year.house.farm, at(3, 3))
    words = words_of(invoice)
    for must in (
        "Date of issue 4 March 2026",
        "Invoice number INV-2026-0001",
        "VAT number IE6388047V",
        "To Low Croft Down the track Nowhere",
        "Tax point (date of supply) 3 March 2026",
        "23 % 67.58 15.54",
        "To pay €83.12",
        "IBAN IE29 AIBK 9311 5212 3456 78",
    ):
        assert must in words
    assert "Ireland" not in words
    assert read(invoice).totals["BT-110"] == D("15.54")


def test_reverse_charge_from_germany_to_france(db):
    year = office("EUR", "DE", "DE136695976", "19", "Europe/Berlin", tax_name="USt")
    taxed(year, "reverse", category="AE", reason="Reverse charge", reason_code="VATEX-EU-AE")
    farm = year.house.farm
    farm.payer = Payer.objects.create(
        business=farm.business, name="Ferme du Nord", address="1 Rue\nNulle Part", country="FR"
    )
    farm.save()
    visit = year.work(farm, at(3, 3))
    with pytest.raises(InvoiceIncomplete, match="buyer's USt number"):
        year.issue(year.draft(visit), at(3, 4))
    Payer.objects.within(year.house.scope).update(vat_number="FR40303265045")
    farm.payer.refresh_from_db()
    invoice = year.issue(year.draft(visit), at(3, 4))
    words = words_of(invoice)
    for must in ("Nowhere, Germany", "Nulle Part France", "USt number FR40303265045", "Total USt €0.00"):
        assert must in words
    assert words.count("Reverse charge") == 1
    ((category, percent, taxable, tax),) = read(invoice).tax_rows
    assert (category, percent, taxable, tax) == ("AE", 0, D("67.58"), 0)


def test_a_small_business_in_germany_charges_no_tax_and_says_why(db):
    told = {"registration_name": "Steuernummer", "registration_number": "12/345/67890", "tax_name": "USt"}
    year = office("EUR", "DE", "", "19", "Europe/Berlin", **told)
    taxed(year, "small", category="E", reason="Steuerbefreit nach § 19 UStG")
    invoice = year.bill(year.house.farm, at(3, 3))
    note = year.credit(invoice, at(3, 9))
    for paper in (invoice, note):
        words = words_of(paper)
        assert "Steuerbefreit nach § 19 UStG" in words
        assert "Steuernummer 12/345/67890" in words
        assert (paper.tax, paper.gross, read(paper).tax_rows[0][0]) == (0, D("67.58"), "E")
    assert "Work done 3 March 2026" in words
    assert "Tax point 9 March 2026" in words
    assert f"It corrects invoice {invoice.number} of 4 March 2026: A cow counted twice" in words


def test_yen_have_no_decimals_and_what_is_credited_leaves_nothing(db):
    year = office("JPY", "JP", "T1234567890123", "10", "Asia/Tokyo", rounding_rule="per_line", tax_name="Tax")
    Price.objects.within(year.house.scope).update(unit_price=1003)
    invoice = year.bill(year.house.farm, at(3, 3, 2), cows=3)
    assert (invoice.net, invoice.tax, invoice.gross) == (5015, 201 + 3 * 100, 5516)
    note = year.credit(invoice, at(3, 9))
    assert "JPY 5,516" in words_of(note)
    assert read(note).totals["BT-110"] == 501
    (rate,), (sold,) = (
        getattr(tax_summary(year.house.scope, year_of(day(6, 1))), name) for name in ("rates", "currencies")
    )
    assert (rate.net, rate.tax, sold.gross) == (0, 0, 0)
    assert {row.gross.as_tuple().exponent for row in sales_journal(year.house.scope, year_of(day(6, 1)))} == {
        0
    }


def test_british_tax_in_euro_is_told_in_sterling_too(db):
    year = office("EUR", "GB", "GB123456789", "20", "Europe/London")
    draft = year.draft(year.work(year.house.farm, at(3, 3)))
    with pytest.raises(InvoiceIncomplete, match="what one EUR is in GBP"):
        year.issue(draft, at(3, 4))
    head = DraftHead("", "", "", home_rate=D("0.8433"))
    draft = change_draft_head(invoice=draft, head=head, hand=year.hand(at(3, 4)))
    invoice = year.issue(draft, at(3, 4))
    for paper in (invoice, year.credit(invoice, at(3, 9))):
        assert "Total VAT €13.52" in words_of(paper)
        assert "VAT in sterling £11.40" in words_of(paper)
        assert b'currencyID="GBP">11.40<' in bytes(paper.papers.ubl)
