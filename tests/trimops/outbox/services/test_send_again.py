from datetime import timedelta

import pytest

from tests.factories import NOON
from tests.trimops.outbox.messages import go, in_state, log, now, put
from trimops.errands.models import Errand
from trimops.outbox.models import Outgoing
from trimops.outbox.services.leave_outgoing import leave_outgoing
from trimops.outbox.services.send_again import NotToBeSentAgain, TextIsGone, send_again


@pytest.mark.parametrize("state", ["failed", "lapsed", "left"])
def test_the_same_message_waits_again_from_the_first_try_on(house, state):
    row = in_state(house, state, tries=6, worthless_after=NOON, not_before=NOON + timedelta(hours=9))
    again = send_again(outgoing=row, at=NOON, by=house.owner)
    assert (again.pk, again.key) == (row.pk, row.key)
    assert (again.state, again.tries, again.next_try_at) == ("waiting", 0, None)
    assert (again.worthless_after, again.not_before) == (None, None)
    assert log(again)[-1] == ("waiting", f"Asked for again by {house.owner}")


@pytest.mark.parametrize("state", ["waiting", "going", "went"])
def test_what_went_or_goes_is_not_sent_again(house, state):
    with pytest.raises(NotToBeSentAgain):
        send_again(outgoing=in_state(house, state), at=NOON, by=house.owner)


def test_a_link_that_only_its_receiver_could_know_cannot_go_again(house):
    row = put(house, body="Open {secret}.", secret="s")
    leave_outgoing(outgoing=row, at=NOON, by=house.owner)
    with pytest.raises(TextIsGone, match="make a new one"):
        send_again(outgoing=now(row), at=NOON, by=house.owner)


def test_what_is_not_kept_any_more_cannot_go_again(house):
    with pytest.raises(TextIsGone, match="not kept"):
        send_again(outgoing=in_state(house, "failed", body=""), at=NOON, by=house.owner)


def test_it_goes_after_the_commit(house, django_capture_on_commit_callbacks, mailoutbox):
    row = in_state(house, "failed")
    with django_capture_on_commit_callbacks(execute=True):
        send_again(outgoing=row, at=NOON, by=house.owner)
    assert (now(row).state, len(mailoutbox)) == ("went", 1)


def test_one_that_is_left_and_wanted_again_has_one_errand(house, mail_line):
    mail_line.does = ["451 later", "take"]
    row = put(house)
    go(row, NOON)
    leave_outgoing(outgoing=row, at=NOON, by=house.owner)
    send_again(outgoing=now(row), at=NOON, by=house.owner)
    assert Errand.objects.within(house.scope).count() == 1
    assert go(row, NOON) == "went"
    assert Outgoing.objects.within(house.scope).get().tries == 1
