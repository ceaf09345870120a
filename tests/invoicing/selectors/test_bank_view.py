from invoicing.selectors.bank_view import (
    bank_counts,
    entries_done,
    entries_gone_out,
    entries_to_match,
    files_waiting,
    statements_read,
)
from invoicing.selectors.paid_back_by import what_it_may_pay_back
from invoicing.services.set_aside_entry import set_aside_entry
from tests.factories import NOON, make_house
from tests.invoicing.services.test_keep_bank_file import keep
from tests.invoicing.services.test_match_entry import booking, match
from tests.invoicing.services.test_note_payment import note


def test_bookings_by_what_became_of_them(house):
    waiting, out = booking(house), booking(house, "-5")
    aside, booked = booking(house), booking(house)
    set_aside_entry(entry=aside, because="Rent", at=NOON)
    match(house, booked)
    booking(make_house("Fell & Beck"))
    assert list(entries_to_match(house.scope)) == [waiting]
    assert list(entries_gone_out(house.scope)) == [out]
    assert set(entries_done(house.scope)) == {aside, booked}
    counts = bank_counts(house.scope)
    assert (counts.all, counts.came_in, counts.went_out, counts.set_aside) == (4, 1, 1, 1)


def test_files_read_and_waiting(house):
    row = keep(house)
    booking(house)
    assert row in files_waiting(house.scope)
    assert [statement.brought for statement in statements_read(house.scope)] == [1]


def test_what_went_out_may_be_a_rest_that_is_large_enough(house):
    enough = note(house, "10")
    note(house, "4.99")
    (choice,) = what_it_may_pay_back(house.scope, booking(house, "-5"))
    assert (choice.value, choice.left) == (f"payment-{enough.pk}", 10)
