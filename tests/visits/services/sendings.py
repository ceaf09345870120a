"""Sendings of a phone without the address: as the service is handed them."""

from datetime import timedelta

from tests.visits.api.phone import Phone
from visits.domain.read_batch import read_batch
from visits.services.take_writings import take_writings

HOUR = timedelta(hours=1)


def phone_at(visit) -> Phone:
    return Phone(None, visit)


def send(phone, house, at, **changes):
    """All that waits, as if it came in at `at`; what was answered waits no more."""
    batch, faults = read_batch(phone.body(sent_at=at.isoformat(), **changes))
    assert faults == []
    answers = take_writings(visit=phone.visit, batch=batch, at=at, by=house.trimmer)
    phone.waiting = []
    return answers


def made(at):
    """For `Phone.write`: made at that moment, by a clock that is right."""
    return {"made_at": at.isoformat()}


def outcomes(answers):
    return [answer.outcome.value for answer in answers]


def reasons(answers):
    return [[(fault.field, fault.reason) for fault in answer.faults] for answer in answers]
