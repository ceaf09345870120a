from datetime import timedelta

import pytest

from tests.factories import NOON
from tests.trimops.outbox.messages import in_state, log
from trimops.outbox import owners
from trimops.outbox.domain.outgoing_states import OutgoingState, Topic
from trimops.outbox.services.end_outgoing import Outcome, end_outgoing

FAILED, WENT = OutgoingState.FAILED, OutgoingState.WENT


@pytest.fixture
def told(monkeypatch):
    heard = []
    owner = owners.Owner(renew=lambda row, at: "", never_went=lambda row, at: heard.append((row.pk, at)))
    monkeypatch.setitem(owners.OWNERS, Topic.VISIT, owner)
    return heard


@pytest.mark.parametrize(
    ("outcome", "state", "keeps_secret", "is_told"),
    [
        (Outcome(WENT, "250"), "went", False, False),
        (Outcome(FAILED, "451"), "waiting", True, False),
        (Outcome(FAILED, "550", for_good=True), "failed", False, True),
        (Outcome(FAILED, "broke", for_good=True, is_unsure=True), "failed", False, False),
        (Outcome(OutgoingState.LAPSED, "late"), "lapsed", False, True),
        (Outcome(OutgoingState.LEFT, "left"), "left", False, True),
    ],
)
def test_who_owns_it_hears_of_it_only_when_nobody_can_have_it(
    house, told, outcome, state, keeps_secret, is_told
):
    row = in_state(house, "going", tries=1, secret="s")
    end_outgoing(row=row, outcome=outcome, at=NOON)
    assert (row.state, bool(row.secret), told == [(row.pk, NOON)]) == (state, keeps_secret, is_told)
    assert (row.next_try_at == NOON + timedelta(minutes=1)) == (state == "waiting")
    assert log(row)[-1] == (state, outcome.words)


def test_once_they_may_have_it_that_stays_true(house, told):
    row = in_state(house, "going", tries=6, may_have_gone=True)
    end_outgoing(row=row, outcome=Outcome(FAILED, "451 " + "x" * 900), at=NOON)
    assert (row.state, row.may_have_gone, told, len(row.last_words)) == ("failed", True, [], 500)
