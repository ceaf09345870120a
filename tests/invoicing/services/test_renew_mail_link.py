"""Over a real line: the link that a mail carries opens its invoice; that of a mail that never went opens nothing."""

from datetime import timedelta

from invoicing.domain.sent_papers import SentPaper
from invoicing.models import InvoiceLink
from invoicing.services.make_mail import MailPaper
from invoicing.services.renew_mail_link import drop_mail_link, renew_mail_link
from tests.factories import NOON
from tests.invoicing.issued_row import issued_row
from tests.invoicing.services.test_queue_sending import queue
from tests.trimops.outbox.messages import go, now
from trimops.outbox.services.leave_outgoing import leave_outgoing
from trimops.outbox.services.send_again import send_again

MINUTE = timedelta(minutes=1)


def bill(house, *, with_link=True):
    return queue(house, paper=MailPaper(SentPaper.INVOICE, issued_row(house)), with_link=with_link).outgoing


def alive(house, at=NOON):
    return [link for link in InvoiceLink.objects.within(house.scope) if link.is_alive(at)]


def test_a_mail_that_is_tried_again_by_itself_keeps_its_link(house, mail_line):
    mail_line.does = ["451 later", "take"]
    mail = bill(house)
    assert go(mail, NOON) == NOON + MINUTE
    assert go(mail, NOON + MINUTE) == "went"
    (link,) = alive(house)
    assert link.made_at == NOON
    assert "/bill/" in mail_line.taken[0].mail.get_body().get_content()
    assert now(mail).secret == ""


def test_one_that_is_refused_closes_it_and_a_persons_second_try_carries_a_new_one(house, mail_line):
    mail_line.does = ["rcpt 550 unknown", "take"]
    mail = bill(house)
    assert go(mail, NOON) == "failed"
    assert alive(house) == []
    send_again(outgoing=now(mail), at=NOON + MINUTE, by=house.owner)
    assert go(mail, NOON + MINUTE) == "went"
    (link,) = alive(house)
    assert link.made_at == NOON + MINUTE


def test_one_that_is_left_closes_it(house):
    leave_outgoing(outgoing=bill(house), at=NOON, by=house.owner)
    assert alive(house) == []


def test_one_that_may_have_gone_keeps_it(house, mail_line):
    mail_line.does = ["hang up"]
    mail, at = bill(house), NOON
    while (later := go(mail, at)) != "failed":
        at = later
    assert len(alive(house)) == 1


def test_a_mail_without_a_link_gets_none(house):
    mail = bill(house, with_link=False)
    assert renew_mail_link(outgoing=mail, at=NOON) == ""
    drop_mail_link(outgoing=mail, at=NOON)
    assert not InvoiceLink.objects.within(house.scope).exists()
