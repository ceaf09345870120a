"""Invoices: what the office and what the farm see of them."""

from datetime import date

import pytest

from tests.factories import make_farm, make_prices
from tests.invoicing.api.conftest import refusal
from tests.invoicing.drafts import draft, issue, plain_draft
from tests.invoicing.issued_papers import issued


def ids(answer):
    return [item["id"] for item in answer.json()["items"]]


@pytest.fixture
def papers(house):
    """Two issued ones of the farm, one of another farm, a draft."""
    other = make_farm(house.business, "Far Croft", by=house.owner)
    first = issued(house.farm, "10.00", date(2026, 2, 2))
    second = issued(house.farm, "12.50", date(2026, 2, 9), settled="2.50")
    foreign = issued(other, "20.00", date(2026, 2, 5), is_open=False, settled="20.00")
    return first, second, foreign, plain_draft(house)


@pytest.mark.parametrize(
    ("query", "expected"),
    [
        ("", [3, 1, 2, 0]),
        ("order=-newest", [0, 2, 1, 3]),
        ("state=issued", [1, 2, 0]),
        ("state=draft", [3]),
        ("is_open=true", [1, 0]),
        ("issued_from=2026-02-05&issued_until=2026-02-08", [2]),
        ("is_overdue=true", [1, 0]),
        ("is_overdue=false", [3, 2]),
        ("farm={farm}", [3, 1, 0]),
        ("number={number}", [2]),
        ("kind=credit_note", []),
    ],
)
def test_the_list_is_narrowed_and_ordered(ask, house, papers, query, expected):
    asked = query.format(farm=house.farm.pk, number=papers[2].number.lower())
    assert ids(ask("GET", f"/invoices/?{asked}")) == [papers[n].pk for n in expected]


def test_amounts_have_the_decimals_of_the_currency(ask, papers):
    told = ask("GET", f"/invoices/{papers[1].pk}/").json()
    assert (told["currency"], told["payable"], told["settled"], told["open_amount"]) == (
        *("GBP", "12.50", "2.50"),
        "10.00",
    )
    assert told["paid"] == "overdue"


def test_one_is_told_with_its_lines_its_tax_and_its_papers(ask, house):
    make_prices(house.business)
    made = issue(draft(house), house)
    told = ask("GET", f"/invoices/{made.pk}/").json()
    assert [line["item"] for line in told["lines"]] == ["corrective", "block", "call_out"]
    assert told["tax_shares"] == [{"category": "S", "percent": "20.00", "taxable": "30.00", "tax": "6.00"}]
    assert (told["seller"]["name"], told["buyer"]["name"]) == (house.business.name, house.farm.name)
    assert (told["gross"], told["no_xml_because"]) == ("36.00", "")
    pdf = ask("GET", f"/invoices/{made.pk}/invoice.pdf", Accept="application/pdf")
    assert (pdf.status_code, pdf["Content-Type"], pdf.content[:4]) == (200, "application/pdf", b"%PDF")
    for form in ("cii", "ubl"):
        xml = ask("GET", f"/invoices/{made.pk}/{form}.xml")
        assert (xml.status_code, xml["Content-Type"]) == (200, "application/xml")
        assert made.number.encode() in xml.content


def test_a_draft_has_a_marked_paper_and_no_e_invoice(ask, papers):
    assert ask("GET", f"/invoices/{papers[3].pk}/invoice.pdf").content[:4] == b"%PDF"
    assert refusal(ask("GET", f"/invoices/{papers[3].pk}/cii.xml")) == (404, "not_found")


def test_a_farm_sees_its_own_issued_ones_and_nothing_that_is_for_staff(ask_as_farm, house, papers):
    first, second, foreign, own_draft = papers
    assert ids(ask_as_farm("GET", "/invoices/")) == [second.pk, first.pk]
    made = issue(own_draft, house)
    told = ask_as_farm("GET", f"/invoices/{made.pk}/").json()
    assert told["lines"][0]["net"] == "10.00"
    assert (told["lines"][0]["why"], told["lines"][0]["is_by_hand"], told["settled_by"]) == (None, None, [])
    assert ask_as_farm("GET", f"/invoices/{made.pk}/invoice.pdf").status_code == 200
    hidden = plain_draft(house)
    for key in (foreign.pk, hidden.pk):
        for paper in ("", "invoice.pdf", "cii.xml"):
            assert refusal(ask_as_farm("GET", f"/invoices/{key}/{paper}")) == (404, "not_found")
    for address in ("/payments/", "/drafts/", "/owed/", "/books/", f"/invoices/{made.pk}/links/"):
        assert refusal(ask_as_farm("GET", address)) == (403, "not_allowed")
