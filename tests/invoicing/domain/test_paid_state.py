from datetime import date
from decimal import Decimal

import pytest

from invoicing.domain.paid_state import PaidState, paid_state

TODAY, YESTERDAY = date(2026, 4, 2), date(2026, 4, 1)


@pytest.mark.parametrize(
    ("payable", "settled", "due_on", "state"),
    [
        ("120", "0", TODAY, PaidState.OPEN),
        ("120", "0", None, PaidState.OPEN),
        ("120", "0", YESTERDAY, PaidState.OVERDUE),
        ("120", "119.99", YESTERDAY, PaidState.OVERDUE),
        ("120", "0.01", TODAY, PaidState.PART),
        ("120", "120.0000", YESTERDAY, PaidState.PAID),
        ("120", "130", YESTERDAY, PaidState.PAID),
        ("0", "0", YESTERDAY, PaidState.PAID),
    ],
)
def test_it_is_overdue_from_the_day_after_the_due_day(payable, settled, due_on, state):
    assert paid_state(Decimal(payable), Decimal(settled), due_on, TODAY) is state


def test_each_has_words_of_its_own():
    assert len({state.label for state in PaidState}) == len(PaidState)
    assert PaidState.PAID.mark == "done" != PaidState.OVERDUE.mark
