import pytest

from invoicing.selectors.sending_rows import log_of
from invoicing.services.send_again import NotToBeSentAgain, send_again
from tests.factories import NOON
from tests.invoicing.services.test_queue_sending import queue


def in_state(house, state):
    sending = queue(house)
    sending.state, sending.tries, sending.left_at = state, 6, NOON
    sending.save()
    return sending


@pytest.mark.parametrize("state", ["failed", "unclear"])
def test_the_same_mail_waits_again_from_the_first_try_on(house, state):
    sending = in_state(house, state)
    again = send_again(sending=sending, at=NOON, by=house.owner)
    assert (again.pk, again.message_id) == (sending.pk, sending.message_id)
    assert (again.state, again.tries, again.next_try_at, again.left_at) == ("queued", 0, None, None)
    assert log_of(again)[-1].words == f"Asked for again by {house.owner}"


@pytest.mark.parametrize("state", ["queued", "going", "handed_over"])
def test_what_went_or_goes_is_not_sent_again(house, state):
    with pytest.raises(NotToBeSentAgain):
        send_again(sending=in_state(house, state), at=NOON, by=house.owner)
