"""The stated confidence, on single cases and on a labelled set of our own."""

from collections import Counter
from datetime import date
from decimal import Decimal
from time import perf_counter

import pytest

from invoicing.domain.creditor_reference import creditor_reference
from invoicing.domain.match_facts import Booking, OpenBill, OpenBook
from invoicing.domain.matching import SURE, TO_LOOK_AT, best_proposals
from tests.invoicing.domain.labelled_bookings import Maker

DAY = date(2026, 3, 2)
ACCOUNT = "DE79100000000555000111"


def bill(key, amount, group="farm:1", issued=date(2026, 2, 1)):
    number = f"INV-2026-{key:04d}"
    farm = int(group.split(":")[1])
    return OpenBill(key, number, creditor_reference(number), group, farm, Decimal(amount), issued)


BILLS = (
    bill(41, 100),
    bill(42, 250),
    bill(43, 100, "farm:2"),
    bill(44, 77, "farm:2"),
    bill(45, 500, "farm:3"),
)
NAMES = {"farm:1": ("Hof Quellenried",), "farm:2": ("Gut Erlenbach",), "farm:3": ("Ærøgården",)}
BOOK = OpenBook(BILLS, NAMES, {ACCOUNT: frozenset({"farm:1"})})


def match(amount, **said):
    return best_proposals(Booking(1, said.pop("day", DAY), Decimal(amount), "EUR", **said), BOOK)


RF42 = creditor_reference("INV-2026-0042")


@pytest.mark.parametrize(
    ("amount", "said", "keys", "confidence"),
    [
        (250, {"reference": RF42}, [42], "0.99"),
        (250, {"text": f"feet {RF42[:4]} {RF42[4:8]} {RF42[8:]} thanks"}, [42], "0.99"),
        (200, {"reference": RF42}, [42], "0.96"),
        (300, {"reference": RF42}, [42], "0.96"),
        (250, {"text": "INV-2026-0042"}, [42], "0.96"),
        (250, {"text": "inv 2026 0042"}, [42], "0.96"),
        (250, {"text": "2026/0042"}, [42], "0.88"),
        (200, {"text": "INV-2026-0042"}, [42], "0.72"),
        (250, {"party_account": f"DE79 {ACCOUNT[4:]}"}, [42], "0.90"),
        (250, {"party_account": ACCOUNT, "party_name": "Hof Quellenried GbR"}, [42], "0.95"),
        (350, {"party_account": ACCOUNT}, [41, 42], "0.90"),
        (350, {"text": "INV-2026-0041 + INV-2026-0042"}, [41, 42], "0.96"),
        (500, {"party_name": "AEROGARDEN"}, [45], "0.80"),
        (500, {}, [45], "0.60"),
        (498, {"text": "INV-2026-0045", "charges": Decimal(2)}, [45], "0.86"),
        (500, {"text": "INV-2026-0045", "day": date(2026, 1, 2)}, None, ""),
        (500, {"text": "INV-2026-0045", "party_account": ACCOUNT}, [45], "0.76"),
        (500, {"text": "INV-2026-0045", "has_twin": True}, None, ""),
        (100, {}, None, ""),
        (999, {}, None, ""),
        (-250, {"reference": RF42}, None, ""),
        (120, {"party_account": ACCOUNT}, [41, 42], "0.60"),
    ],
)
def test_stated_confidences(amount, said, keys, confidence):
    found = match(amount, **said)
    if keys is None:
        assert found == []
    else:
        assert [key for key, _ in found[0].shares] == keys
        assert found[0].confidence == Decimal(confidence)


def test_reasons_are_named():
    best = match(200, reference=RF42, party_account=ACCOUNT)[0]
    assert best.reasons == ("Payment reference", "Account has paid before")
    assert best.against == ("less than is open",)
    assert best.farm == 1


def test_money_goes_to_the_oldest_and_what_is_over_stays_free():
    assert match(120, party_account=ACCOUNT)[0].shares == ((41, 100), (42, 20))
    assert match(300, reference=RF42)[0].shares == ((42, 250),)


def test_a_reference_of_another_invoice_than_the_amount_says_is_looked_at():
    best = match(100, reference=RF42, party_account=ACCOUNT)
    assert best[0].confidence < SURE
    assert {key for proposal in best for key, _ in proposal.shares} >= {41}


def test_two_that_fit_are_never_sure():
    twins = OpenBook(
        (bill(1, 100), bill(2, 100)), {"farm:1": ("Quellenried",)}, {ACCOUNT: frozenset({"farm:1"})}
    )
    booking = Booking(1, DAY, Decimal(100), "EUR", party_account=ACCOUNT, party_name="Quellenried")
    found = best_proposals(booking, twins)
    assert found[0].confidence <= Decimal("0.90")
    assert [key for key, _ in found[0].shares] == [1]


def test_the_sure_ones_of_our_labelled_set_are_all_right():
    """Precision 1.0 above 0.95; the coverage is measured and must not fall below what it was when this was written."""
    maker = Maker()
    bookings = maker.all()
    bands: Counter[tuple[str, bool]] = Counter()
    for labelled in bookings:
        found = best_proposals(labelled.booking, maker.book)
        sure = found[0].confidence if found else Decimal(0)
        band = "sure" if sure >= SURE else "to look at" if sure >= TO_LOOK_AT else "open"
        is_right = bool(found) and {key for key, _ in found[0].shares} == labelled.truth
        bands[band, is_right] += 1
        assert band != "sure" or is_right, (labelled.how, labelled.booking, found)
    assert sum(bands.values()) == 200
    assert bands["sure", True] >= COVERED


# Measured on 30 Nov 2026: 104 of 200 sure and right, 65 to look at and right, 15 to look at and wrong, 16 open.
COVERED = 100


@pytest.mark.parametrize("seed", range(4))
def test_other_seeds_as_well(seed):
    maker = Maker(seed)
    for labelled in maker.all():
        found = best_proposals(labelled.booking, maker.book)
        if found and found[0].confidence >= SURE:
            assert {key for key, _ in found[0].shares} == labelled.truth, (labelled.how, found)


def test_many_open_invoices_take_no_long_search():
    bills = tuple(bill(n, 100 + n % 900, f"farm:{n % 50}") for n in range(1, 2001))
    book = OpenBook(bills, {f"farm:{n}": (f"Farm {n}",) for n in range(50)}, {ACCOUNT: frozenset({"farm:1"})})
    start = perf_counter()
    for n in range(30):
        said = {"text": f"INV-2026-{n + 100:04d}", "party_account": ACCOUNT}
        best_proposals(Booking(n, DAY, Decimal(300 + n), "EUR", **said), book)
    assert perf_counter() - start < 3
