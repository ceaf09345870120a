from tests.factories import NOON
from tests.trimops.outbox.messages import log, put
from trimops.outbox.domain.outgoing_states import OutgoingState
from trimops.outbox.services.note_outgoing import note_outgoing


def test_long_words_are_cut_to_what_the_log_holds(house):
    row = put(house)
    note_outgoing(outgoing=row, state=OutgoingState.FAILED, at=NOON, words="451 " + "x" * 900)
    (first, _), (last, words) = log(row)
    assert (first, last, len(words)) == ("waiting", "failed", 500)
