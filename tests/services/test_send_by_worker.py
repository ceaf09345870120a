"""A real Celery worker hands real mails to a real mail server."""

import os
import signal
from datetime import timedelta
from threading import Event

import pytest
from django.utils import timezone

from invoicing.services.send_invoice import send_invoice
from tests.factories import make_house
from tests.invoicing.issued_row import PDF, issued_row
from tests.services.smtp_server import mail_server
from tests.services.test_job_worker import wait_for
from tests.services.worker import worker
from tests.trimops.outbox.messages import log, now, put
from trimops.celery import app
from trimops.errands.services.tick import tick
from trimops.outbox.models import Outgoing
from trimops.outbox.services.send_outgoing import STOPPED

pytestmark = [pytest.mark.services, pytest.mark.usefixtures("transactional_db")]


def told(server):
    """The worker is told of the mail server as on a real machine: by its environment."""
    return {
        "TRIMOPS_EMAIL_HOST": "127.0.0.1",
        "TRIMOPS_EMAIL_PORT": str(server.port),
        "TRIMOPS_EMAIL_TLS": "0",
    }


def states(house):
    return sorted(Outgoing.objects.within(house.scope).values_list("state", flat=True))


def test_of_two_addresses_one_is_served_and_the_other_refused_in_the_servers_words(tmp_path):
    house = make_house()
    to = ["good@example.invalid", "wrong@example.invalid"]
    with mail_server() as server, worker(app, tmp_path / "worker.log", **told(server)) as started:
        server.does = ["take", "rcpt 550 5.1.1 no such person here"]
        at = timezone.now()
        send_invoice(invoice=issued_row(house), at=at, by=house.office, addresses=to)
        wait_for(lambda: states(house) == ["failed", "went"])
        (taken,) = server.taken
        said = started.said()
    (part,) = taken.mail.iter_attachments()
    assert part.get_content() == PDF
    secret = taken.mail.get_body().get_content().partition("/bill/")[2].partition("/")[0]
    assert len(secret) > 40
    assert secret not in said


def test_killed_while_the_server_has_the_text_it_goes_again_with_the_same_number(tmp_path):
    house = make_house()
    with mail_server() as server:
        with worker(app, tmp_path / "first.log", **told(server)) as first:
            server.pause = Event()
            row = put(house, at=timezone.now())
            assert server.reached_text.wait(30)
            assert now(row).state == "going"
            os.killpg(first.process_id, signal.SIGKILL)
            server.pause.set()
        wait_for(lambda: len(server.taken) == 1)
        with worker(app, tmp_path / "second.log", **told(server)):
            tick(now=timezone.now() + timedelta(seconds=15))
            wait_for(lambda: now(row).state == "went")
        first_id, second_id = (taken.mail["Message-ID"] for taken in server.taken)
    assert first_id == second_id == f"<{row.key}@localhost>"
    assert (now(row).tries, now(row).may_have_gone) == (2, True)
    assert ("waiting", STOPPED) in log(row)
