import pytest

from invoicing.selectors.sending_rows import log_of, sending_counts
from invoicing.services.leave_sending import WentAlready, leave_sending
from tests.factories import NOON
from tests.invoicing.services.test_queue_sending import queue


@pytest.mark.parametrize("state", ["queued", "failed", "unclear"])
def test_what_is_left_waits_no_more_and_is_told_of_no_more(house, state):
    sending = queue(house)
    sending.state, sending.next_try_at = state, NOON if state == "failed" else None
    sending.save()
    left = leave_sending(sending=sending, at=NOON, by=house.office)
    assert (left.left_at, left.next_try_at) == (NOON, None)
    counts = sending_counts(house.scope)
    assert (counts.waiting, counts.to_see_to) == (0, 0)
    assert leave_sending(sending=sending, at=NOON, by=house.office).left_at == NOON
    assert [event.words for event in log_of(left)].count(f"Left by {house.office}: it need not go") == 1


@pytest.mark.parametrize("state", ["going", "handed_over"])
def test_what_went_cannot_be_called_back(house, state):
    sending = queue(house)
    sending.state = state
    sending.save()
    with pytest.raises(WentAlready):
        leave_sending(sending=sending, at=NOON, by=house.office)
