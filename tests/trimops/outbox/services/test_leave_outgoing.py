import pytest

from tests.factories import NOON
from tests.trimops.outbox.messages import in_state, log, now
from trimops.outbox.services.leave_outgoing import WentAlready, leave_outgoing


@pytest.mark.parametrize("state", ["waiting", "failed", "lapsed"])
def test_what_is_left_waits_no_more_and_keeps_what_the_server_said(house, state):
    row = in_state(
        house, state, next_try_at=NOON if state == "waiting" else None, last_words="451", secret="s"
    )
    leave_outgoing(outgoing=row, at=NOON, by=house.office)
    left = leave_outgoing(outgoing=now(row), at=NOON, by=house.office)
    assert (left.state, left.next_try_at, left.last_words, left.secret) == ("left", None, "451", "")
    assert now(row).last_words == "451"
    assert [words for _, words in log(row)].count(f"Left by {house.office}: it need not go") == 1


@pytest.mark.parametrize("state", ["going", "went"])
def test_what_went_cannot_be_called_back(house, state):
    with pytest.raises(WentAlready):
        leave_outgoing(outgoing=in_state(house, state), at=NOON, by=house.office)
