from invoicing.domain.sending_states import SendingState
from invoicing.selectors.sending_rows import log_of
from invoicing.services.note_sending import note_sending
from tests.factories import NOON
from tests.invoicing.services.test_queue_sending import queue


def test_long_words_are_cut_to_what_the_log_holds(house):
    sending = queue(house)
    note_sending(sending=sending, state=SendingState.FAILED, at=NOON, words="451 " + "x" * 900)
    first, last = log_of(sending)
    assert (first.state, last.state, len(last.words)) == ("queued", "failed", 500)
