"""People of the farm are told that a report is there."""

import re
from datetime import timedelta
from urllib.parse import unquote

import pytest
from django.core import mail
from django.utils import timezone

from farms.models import Contact
from tests.factories import TUESDAY_TEN, blocked_foot, finish, make_member, put_down, under_way
from trimops.accounts.roles import FarmRight, Role
from trimops.outbox.domain.outgoing_states import Channel
from trimops.outbox.models import Outgoing
from trimops.outbox.senders.ready import Refused
from trimops.outbox.senders.senders import SENDERS
from trimops.portal.services.spend_link import owner_of_link
from trimops.portal.services.tell_report import tell_report
from trimops.portal.tasks import tell_report_task
from visits.models import IssuedReport
from visits.services.issue_report import issue_first_report

NOW = timezone.now()  # because: a link that ended before it went is not sent
LINK = re.compile(r"http://localhost:8000/my-farm/come-in/([\w-]+)/\?(\S+)")


@pytest.fixture
def report(house):
    visit = under_way(house.farm, house.van, TUESDAY_TEN)
    put_down(visit, house.cow, blocked_foot(for_vet="hot above the horn"))
    return issue_first_report(visit=finish(visit, house.trimmer), at=TUESDAY_TEN, tell=False)


@pytest.fixture
def tell(report, django_capture_on_commit_callbacks):
    def told():
        with django_capture_on_commit_callbacks(execute=True):
            return tell_report(report=report, at=NOW)

    return told


def contact(house, email, **fields):
    return Contact.objects.create(
        business=house.business, farm=house.farm, name="C.", part="Office", email=email, **fields
    )


def test_who_reads_reports_gets_a_link_that_signs_in_and_leads_to_it(house, report, tell):
    assert tell() == [house.client.email]
    (message,) = mail.outbox
    secret, query = LINK.search(message.body).groups()
    assert owner_of_link(secret) == house.client
    assert unquote(query) == f"farm={house.farm.pk}&next=/my-farm/reports/{report.visit_id}/"
    assert message.attachments == []
    lines = message.body.splitlines()
    assert [line for line in lines if line.startswith("For the vet: ") and "hot above the horn" in line]
    assert [line for line in lines if line.startswith("Blocks to come off: ") and "101" in line]


def test_a_contact_without_an_account_gets_the_paper(house, report, tell):
    contact(house, "office@farm.example", gets_reports=True)
    contact(house, "quiet@farm.example")
    contact(house, house.client.email, gets_reports=True)
    assert sorted(tell()) == sorted([house.client.email, "office@farm.example"])
    (paper,) = next(m for m in mail.outbox if m.to == ["office@farm.example"]).attachments
    assert paper[1] == bytes(report.pdf)
    assert "come-in" not in next(m for m in mail.outbox if m.attachments).body


def test_who_may_not_read_reports_and_who_left_is_not_told(house, rights, tell):
    rights(FarmRight.SEES_MONEY)
    make_member(house.business, Role.FARM)
    assert tell() == []
    assert mail.outbox == []


def test_nobody_is_told_twice_of_a_version(house, report, tell, django_capture_on_commit_callbacks):
    assert tell() == [house.client.email]
    with django_capture_on_commit_callbacks(execute=True):
        tell_report_task(report_id=report.pk)
    assert len(mail.outbox) == 1
    assert IssuedReport.objects.within(house.scope).get().mailed_to == [house.client.email]


def test_who_was_told_already_is_known_by_the_message_whatever_the_report_says(house, report, tell):
    assert tell() == [house.client.email]
    IssuedReport.objects.within(house.scope).update(mailed_to=[])
    assert tell() == []
    contact(house, "late@farm.example", gets_reports=True)
    assert tell() == ["late@farm.example"]
    assert len(mail.outbox) == 2


def test_one_bad_address_keeps_no_other_from_its_mail(house, tell, monkeypatch):
    contact(house, "a-first@farm.example", gets_reports=True)

    def send(ready):
        if ready.address == house.client.email:
            raise Refused("550 no such mailbox", for_good=True)
        return "250"

    monkeypatch.setitem(SENDERS, Channel.MAIL, send)
    tell()
    rows = Outgoing.objects.within(house.scope).order_by("address")
    assert [(row.address, row.state) for row in rows] == [
        ("a-first@farm.example", "went"),
        (house.client.email, "failed"),
    ]


def test_the_link_lies_here_only_until_it_went(house, report):
    tell_report(report=report, at=NOW)
    row = Outgoing.objects.within(house.scope).get()
    assert LINK.search(row.secret)
    assert not LINK.search(row.body)
    assert (row.farm_id, row.worthless_after) == (house.farm.pk, NOW + timedelta(days=14))
