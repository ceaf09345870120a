from decimal import Decimal

from invoicing.domain.camt053 import read_camt053
from tests.invoicing.domain.test_camt053 import NEW, OLD


def test_a_batch_becomes_its_payments_when_they_add_up():
    lines = read_camt053(OLD)[0].lines[1:3]
    assert [(line.party_name, line.amount, line.bank_reference) for line in lines] == [
        ("Maatschap Veldzicht", 180, "2026030200002/B1"),
        ("Gut Erlenbach", 120, "2026030200002/B2"),
    ]


def test_else_it_stays_one_booking_and_that_is_said():
    week = read_camt053(NEW)[0]
    assert week.lines[-1].text == "INV-2026-0050 INV-2026-0051"
    assert (week.lines[-1].amount, week.lines[-1].party_name) == (200, "")
    assert any("2 payments" in words for words in week.warnings)
    odd = read_camt053(OLD.replace(b'<TxAmt><Amt Ccy="EUR">180.00', b'<TxAmt><Amt Ccy="EUR">181.00'))[0]
    assert odd.lines[1].amount == 300


def test_references_words_and_parties():
    first, *_, with_charges = read_camt053(OLD)[0].lines
    assert (first.reference, first.text) == ("RF73INV20260042", "E2E-42 SEPA credit transfer")
    assert (with_charges.charges, with_charges.amount) == (Decimal("2.50"), Decimal("97.50"))
    tuesday = read_camt053(OLD)[1].lines
    assert tuesday[0].text == "Klauenpflege Rechnung INV-2026-0043"
    assert tuesday[-1].party_name == "Gut Erlenbach"


def test_charges_booked_apart_are_not_kept_back():
    apart = NEW.replace(b"<ChrgInclInd>true", b"<ChrgInclInd>false")
    assert read_camt053(apart)[0].lines[4].charges == 0


def test_a_payment_called_back_names_who_had_paid():
    called_back = OLD.replace(b"<Cdtr><Nm>Gut Erlenbach</Nm></Cdtr>", b"<Dbtr><Nm>Gut Erlenbach</Nm></Dbtr>")
    assert read_camt053(called_back)[1].lines[-1].party_name == "Gut Erlenbach"
