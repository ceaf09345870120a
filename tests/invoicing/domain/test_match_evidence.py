from datetime import date
from decimal import Decimal

from invoicing.domain.match_evidence import Evidence, groups_by_account, groups_by_name, named_bills
from invoicing.domain.match_facts import Booking, OpenBill, OpenBook

DAY = date(2026, 3, 2)
BILL = OpenBill(1, "INV-2026-0042", "RF73INV20260042", "farm:1", 1, Decimal(100), DAY)
BOOK = OpenBook(
    (BILL,),
    {"farm:1": ("Hof Quellenried",), "farm:2": ("Quellenried Hof",), "farm:3": ("Au",)},
    {"DE1": frozenset({"farm:1"})},
)


def said(**words):
    return Booking(1, DAY, Decimal(100), "EUR", **words)


def test_weights_are_joined_and_factors_multiplied_and_rounded_down():
    evidence = Evidence()
    assert evidence.confidence == 0
    evidence.speaks_for(Decimal("0.75"), "a")
    evidence.speaks_for(Decimal("0.5"), "b")
    assert evidence.confidence == Decimal("0.87")
    evidence.speaks_against(Decimal("0.5"), "c")
    assert (evidence.confidence, evidence.reasons, evidence.against) == (Decimal("0.43"), ["a", "b"], ["c"])


def test_the_strongest_way_of_naming_counts():
    assert named_bills(said(text="RF73 INV2 0260 042 INV-2026-0042"), BOOK) == {1: Decimal("0.99")}
    assert named_bills(said(text="INV-2026-0042"), BOOK) == {1: Decimal("0.90")}
    assert named_bills(said(text="2026-0042"), BOOK) == {1: Decimal("0.70")}
    assert named_bills(said(text="rent"), BOOK) == {}


def test_people_by_account_and_by_name():
    assert groups_by_account(said(party_account="de 1"), BOOK) == {"farm:1"}
    assert groups_by_account(said(), BOOK) == frozenset()
    assert groups_by_name(said(party_name="Fam. Quellenried"), BOOK) == {"farm:1", "farm:2"}
    assert groups_by_name(said(party_name="Au"), BOOK) == frozenset()
