"""The page of what runs by itself says how it stands, and to nobody what is not theirs."""

from datetime import timedelta

import pytest
from django.utils import timezone

from tests.factories import NOON, make_house
from tests.trimops.errands.errand_hands import written
from tests.visits.services.lone_watch.watched import can_tell, watched_house
from trimops.accounts.actions import MAY
from trimops.accounts.roles import Role
from trimops.jobs import DAILY, Job
from visits.domain.messages.message_kinds import MessageKind
from visits.selectors.by_itself import daily_lines, parts_of
from visits.services.messages.save_message_rules import switch_message

OWNERS_ALONE = {"Evening plan", "Other programs", "What got stuck", "Backup"}


@pytest.fixture
def house(db, settings, tmp_path):
    settings.BACKUP_DIR = tmp_path
    return make_house()


def told(house, role=Role.OWNER, now=NOON):
    return {
        part.name: part for part in parts_of(house.business, lambda action: role in MAY[action].roles, now)
    }


def test_the_trimmer_sees_no_message_texts_and_nobody_but_the_owner_what_is_the_owners(house):
    owner, office, trimmer = (set(told(house, role)) for role in (Role.OWNER, Role.OFFICE, Role.TRIMMER))
    assert owner - office == OWNERS_ALONE
    assert office - trimmer == {"Messages to farms"}


def test_messages_are_on_once_one_kind_is(house):
    assert told(house)["Messages to farms"].word == "Off"
    switch_message(business=house.business, kind=MessageKind.MOVED, on=True, at=NOON)
    part = told(house)["Messages to farms"]
    assert (part.word, part.says) == ("On", "Switched on: 1 kind of message.")


def test_without_a_mail_server_what_goes_out_reaches_nobody(house, settings):
    settings.EMAIL_HOST = ""
    assert told(house)["What goes out"].word == "Reaches nobody"
    settings.EMAIL_HOST = "mail.example"
    assert told(house)["What goes out"].says == "All went, nothing waits."


def test_a_watch_that_could_tell_nobody_says_why(db, settings):
    can_tell(settings)
    house = watched_house()
    assert told(house)["Lone-worker watch"].word == "On"
    settings.EMAIL_HOST = ""
    part = told(house)["Lone-worker watch"]
    assert part.mark == "urgent"
    assert "has set TRIMOPS_EMAIL_HOST" in part.says


def test_what_got_stuck_is_counted(house):
    assert told(house)["What got stuck"].word == "Well"
    written(house.business, job=Job.DRAFT_INVOICE, state="stuck", tries=8, ended_at=NOON)
    assert told(house)["What got stuck"].says == "1 could not be done."


def test_each_daily_job_has_a_line_and_says_when_it_was_done_last(house):
    now = timezone.now()
    done = now - timedelta(hours=3)
    written(house.business, job=Job.CLEAN_UP, day=done.date(), state="done", tries=1, ended_at=done)
    lines = daily_lines(house.business, now)
    assert [line.what for line in lines] == [job.label for job in DAILY]
    assert {line.what: line.done_at for line in lines if line.done_at} == {Job.CLEAN_UP.label: done}
