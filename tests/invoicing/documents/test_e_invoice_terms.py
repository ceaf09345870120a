from dataclasses import replace
from datetime import date
from decimal import Decimal as D

from invoicing.documents.e_invoice_terms import business_terms
from invoicing.documents.invoice_content import Correction, HomeTax, Payment, WholeLine

WORK_DAY = date(2026, 12, 1)


def test_totals_are_those_of_the_paper(electronic):
    terms = business_terms(electronic())
    totals = {term: terms[term] for term in ("BT-106", "BT-109", "BT-110", "BT-112", "BT-113", "BT-115")}
    assert list(totals.values()) == ["527.41", "527.41", "93.48", "620.89", "100.00", "520.89"]
    assert not {"BT-107", "BT-108", "BT-114"} & terms.keys()


def test_an_invoice_says_when_and_a_credit_note_says_what_it_corrects(electronic):
    terms = business_terms(electronic())
    assert (terms["BT-3"], terms["BT-7"], terms["BT-9"]) == ("380", WORK_DAY, date(2027, 1, 1))
    corrects = Correction("INV-2026-0041", WORK_DAY, "Two cows billed twice.")
    credit = business_terms(electronic(corrects=corrects))
    assert credit["BT-3"] == "381"
    assert credit["BG-3"] == [{"BT-25": "INV-2026-0041", "BT-26": WORK_DAY}]
    assert credit["BG-1"][0] == {"BT-22": "Two cows billed twice."}
    assert not {"BT-9", "BT-81", "BT-84", "BT-20"} & credit.keys()


def test_a_discount_on_a_line_is_said_with_its_reason(electronic):
    paper = electronic()
    line = replace(
        paper.lines[0],
        allowance=D("19.55"),
        allowance_percent=D("10.0000"),
        allowance_reason="Agreed",
        net=D("175.95"),
    )
    said = business_terms(replace(paper, lines=(line,)))["BG-25"][0]
    assert said["BG-27"] == [{"amount": "19.55", "reason": "Agreed", "rate": "10", "base_amount": "195.50"}]
    assert said["BT-131"] == "175.95"
    unexplained = replace(line, allowance_percent=None, allowance_reason="")
    said = business_terms(replace(paper, lines=(unexplained,)))["BG-25"][0]
    assert said["BG-27"] == [{"amount": "19.55", "reason": "Discount"}]


def test_discounts_and_charges_on_the_whole_carry_their_tax(electronic):
    whole = (
        WholeLine(False, D("10.00"), "Herd of the month", "S", D("20.00"), D("100.00"), D(10)),
        WholeLine(True, D("0.00"), "Glove box", "O", D(0)),
    )
    terms = business_terms(electronic(whole=whole, allowances=D("10.00")))
    assert terms["BG-20"] == [
        {
            "amount": "10.00",
            "reason": "Herd of the month",
            "vat_category_code": "S",
            "vat_rate": "20",
            "rate": "10",
            "base_amount": "100.00",
        }
    ]
    assert "vat_rate" not in terms["BG-21"][0]
    assert (terms["BT-107"], terms["BT-108"]) == ("10.00", "0.00")


def test_a_negative_price_becomes_a_negative_quantity(electronic):
    paper = electronic()
    line = replace(paper.lines[0], unit_price=D("-11.50"), net=D("-195.50"))
    said = business_terms(replace(paper, lines=(line,)))["BG-25"][0]
    assert (said["BT-129"], said["BT-146"]) == ("-17", "11.5")


def test_a_unit_in_words_is_agreed_between_the_two_and_stands_in_words(electronic):
    paper = electronic()
    line = replace(paper.lines[0], unit="cow")
    said = business_terms(replace(paper, lines=(line,)))["BG-25"][0]
    assert (said["BT-130"], said["BT-154"]) == ("ZZ", "cow 17 cows, all feet")


def test_the_day_of_the_work_stands_on_the_line_within_the_period(electronic):
    paper = electronic()
    dated = replace(paper, lines=(replace(paper.lines[0], done_on=WORK_DAY),))
    assert business_terms(dated)["BG-25"][0]["BT-134"] == WORK_DAY
    period = (date(2026, 11, 1), date(2026, 11, 30))
    monthly = business_terms(replace(dated, period=period))
    assert (monthly["BT-73"], monthly["BT-74"]) == period
    assert "BT-134" not in monthly["BG-25"][0]


def test_an_iban_is_paid_by_transfer_and_other_details_stand_in_the_terms(electronic):
    iban = Payment(
        iban="DE89370400440532013000", bic="X", account_name="Y", creditor_reference="RF18", reference="1"
    )
    terms = business_terms(electronic(payment=iban, currency="EUR"))
    assert (terms["BT-81"], terms["BT-84"], terms["BT-86"], terms["BT-83"]) == ("58", iban.iban, "X", "RF18")
    assert business_terms(electronic(payment=iban))["BT-81"] == "30"
    words = business_terms(electronic())
    assert words["BT-81"] == "1"
    assert "Sort code: 00-00-00; Account: 00000000" in words["BT-20"]


def test_a_reason_stands_in_the_tax_row_or_where_none_may_in_the_notes(electronic):
    paper = electronic()
    assert business_terms(paper)["BG-23"][1]["BT-120"].startswith("Exempt")
    zero = replace(paper.tax_rows[1], category="Z", exempt_reason="Zero-rated: text")
    terms = business_terms(replace(paper, tax_rows=(zero,)))
    assert "BT-120" not in terms["BG-23"][0]
    assert {"BT-22": "Zero-rated: text"} in terms["BG-1"]


def test_tax_in_sterling_is_a_second_currency_only_beside_another(electronic):
    assert (
        business_terms(electronic(currency="EUR", home_tax=HomeTax("GBP", D("80.00"))))["BT-111"] == "80.00"
    )
    assert "BT-6" not in business_terms(electronic(home_tax=HomeTax("GBP", D("80.00"))))
