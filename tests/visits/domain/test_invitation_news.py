"""What is sent to somebody invited, by a table: what was told, what is so."""

from datetime import UTC, datetime, timedelta

import pytest

from visits.domain.invitation_news import InvitationMethod, InvitedHour, VisitNow, invitation_news
from visits.domain.visit_states import VisitState

NOW = datetime(2026, 3, 2, 12, tzinfo=UTC)
TEN, NOON_OF_IT = NOW + timedelta(hours=22), NOW + timedelta(hours=24)
PAST = NOW - timedelta(hours=1)
TOLD = InvitedHour(TEN, NOON_OF_IT, is_confirmed=True)
TENTATIVE = InvitedHour(TEN, NOON_OF_IT, is_confirmed=False)
OFF = InvitedHour(TEN, NOON_OF_IT, is_confirmed=True, is_off=True)
EARLIER = InvitedHour(TEN - timedelta(hours=1), NOON_OF_IT, is_confirmed=True)
SHORTER = InvitedHour(TEN, NOON_OF_IT - timedelta(hours=1), is_confirmed=True)
BEGAN = InvitedHour(PAST, NOON_OF_IT, is_confirmed=True)
REQUEST, CANCEL = InvitationMethod.REQUEST, InvitationMethod.CANCEL
W, P, C, U, F, O = VisitState  # noqa: E741

TABLE = [
    # told, state, start, what is sent
    (None, W, None, None),
    (None, P, TEN, None),  # nobody is invited to what is only planned
    (None, C, TEN, REQUEST),
    (None, C, PAST, None),
    (None, C, None, None),
    (None, O, TEN, None),
    (TOLD, C, TEN, None),
    (TENTATIVE, C, TEN, REQUEST),
    (TENTATIVE, P, TEN, None),
    (EARLIER, C, TEN, REQUEST),
    (SHORTER, C, TEN, REQUEST),
    (EARLIER, P, TEN, REQUEST),  # moved, and not settled
    (EARLIER, P, PAST, None),
    (TOLD, W, None, CANCEL),
    (TOLD, O, TEN, CANCEL),
    (BEGAN, O, PAST, None),
    (BEGAN, W, None, None),
    (TOLD, U, TEN, None),
    (TOLD, F, TEN, None),
    (OFF, O, TEN, None),
    (OFF, W, None, None),
    (OFF, P, TEN, None),
    (OFF, C, TEN, REQUEST),  # on again at the very hour
]


@pytest.mark.parametrize(("told", "state", "start", "sent"), TABLE)
def test_what_is_sent(told, state, start, sent):
    finish = NOON_OF_IT if start else None
    assert invitation_news(told, VisitNow(state, start, finish, NOW)) is sent
