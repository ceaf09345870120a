"""A real Celery worker hands real mails to a real mail server."""

import os
from contextlib import contextmanager

import pytest
from django.utils import timezone

from invoicing.models import Sending
from invoicing.services.send_invoice import send_invoice
from tests.factories import make_house
from tests.invoicing.issued_row import PDF, issued_row
from tests.services.smtp_server import mail_server
from tests.services.test_job_worker import wait_for
from tests.services.worker import worker
from trimops.celery import app

pytestmark = pytest.mark.services


@contextmanager
def worker_with_mail(port, log):
    """The worker is told of the mail server as on a real machine: by its environment."""
    told = {"TRIMOPS_EMAIL_HOST": "127.0.0.1", "TRIMOPS_EMAIL_PORT": str(port), "TRIMOPS_EMAIL_TLS": "0"}
    before = dict(os.environ)
    os.environ.update(told)
    try:
        with worker(app, log) as started:
            yield started
    finally:
        os.environ.clear()
        os.environ.update(before)


def states(house):
    rows = Sending.objects.within(house.scope).order_by("address")
    return [(row.address.partition("@")[0], row.state, row.tries) for row in rows]


@pytest.mark.usefixtures("transactional_db")
def test_of_two_addresses_one_is_served_and_the_other_refused_in_the_servers_words(tmp_path):
    house = make_house()
    to = ["good@example.invalid", "wrong@example.invalid"]
    with mail_server() as server, worker_with_mail(server.port, tmp_path / "worker.log") as started:
        server.does = ["take", "rcpt 550 5.1.1 no such person here"]
        at = timezone.now()
        send_invoice(invoice=issued_row(house), at=at, by=house.office, addresses=to)
        wait_for(lambda: not {"queued", "going"} & {state for _, state, _ in states(house)})
        assert sorted(state for _, state, _ in states(house)) == ["failed", "handed_over"]
        (taken,) = server.taken
        said = started.said()
    (part,) = taken.mail.iter_attachments()
    assert part.get_content() == PDF
    secret = taken.mail.get_body().get_content().partition("/bill/")[2].partition("/")[0]
    assert len(secret) > 40
    assert secret not in said
