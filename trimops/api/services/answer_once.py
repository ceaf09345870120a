"""A call with an Idempotency-Key is done once; who repeats it has the first answer again."""

import json
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime

from django.db import IntegrityError, transaction

from trimops.accounts.models import User
from trimops.api.models import RepeatableCall
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope


class KeyOfAnother(RuleBroken):
    """The key was used for something else."""

    code = "idempotency_key_reused"

    def __init__(self) -> None:
        super().__init__(
            "This Idempotency-Key was used for another call: take a new one for each thing to be done."
        )


@dataclass(frozen=True)
class Call:
    """Who calls, under which key, and the SHA-256 of farm, method, address and body in hex."""

    scope: Scope
    user: User
    key: str
    fingerprint: str


@dataclass(frozen=True)
class Told:
    """An answer as it is kept: status, headers of ours, and JSON."""

    status: int
    headers: dict[str, str]
    body: object


def answer_once(*, call: Call, act: Callable[[], Told], at: datetime) -> tuple[Told, bool]:
    """The answer of `act`, or of the first time, and whether it is the first one's again.

    One transaction for what is done and what is answered. Whoever comes second while the first is at work waits for
    it. What was refused is not kept: it did nothing, and may be tried again. KeyOfAnother for other content.
    """
    if before := _found(call):
        return before, True
    try:
        with transaction.atomic():
            row = RepeatableCall.objects.create(
                business_id=call.scope.business_id,
                user=call.user,
                key=call.key,
                fingerprint=call.fingerprint,
                called_at=at,
            )
            told = act()
            row.status, row.headers = told.status, told.headers
            # because: PostgreSQL puts the names of an object in an order of its own, and it is to be the same answer
            row.body = json.dumps(told.body)
            row.save(update_fields=["status", "headers", "body"])
            return told, False
    except IntegrityError:
        # because: only the one who came first and holds the key explains it; any other breach is a fault of ours
        if before := _found(call):
            return before, True
        raise


def _found(call: Call) -> Told | None:
    rows = RepeatableCall.objects.within(Scope(call.scope.business_id)).filter(user=call.user, key=call.key)
    row = rows.first()
    if row is None:
        return None
    if row.fingerprint != call.fingerprint:
        raise KeyOfAnother
    return Told(row.status, row.headers, json.loads(row.body or "null"))
