"""A message goes to another program: POSTed as JSON, signed."""

from trimops.kernel.scope import Scope
from trimops.outbox.domain.webhook_signature import signed_headers
from trimops.outbox.models import WebhookAddress
from trimops.outbox.senders.ready import Ready, Refused, Unsure
from trimops.outbox.services.close_webhook import close_webhook
from trimops.outside.guarded_http import Answer, Bounds, Question, ask
from trimops.outside.no_answer import NoAnswer, Why
from trimops.outside.our_guard import our_guard

BOUNDS = Bounds(seconds=15, largest=65_536, redirects=0)
"""Nobody reads the answer's body; Standard Webhooks recommends 15 seconds or more (from memory)."""
GONE = 410
MAY_HAVE_IT = frozenset({Why.SLOW, Why.BROKE_OFF, Why.LARGE})


def send_by_webhook(ready: Ready) -> str:
    """The other side's status in words. Refused, Unsure; never Away: one dead address must not hold up the others.

    410 (Gone) closes the address: whoever answers it wants nothing more.
    """
    rows = WebhookAddress.objects.within(Scope(ready.business_id)).filter(closed_at__isnull=True)
    address = rows.filter(url=ready.address).first()
    if address is None:
        raise Refused("This web address is closed.", for_good=True)
    answer = _post(ready, address.secret)
    if 200 <= answer.status < 300:
        return f"Answered {answer.status}."
    if answer.status == GONE:
        close_webhook(address=address, at=ready.at)
        raise Refused("Answered 410: it wants nothing more, so the address was closed.", for_good=True)
    raise Refused(f"Answered {answer.status}.")


def _post(ready: Ready, secret: str) -> Answer:
    body = ready.body.encode()
    headers = {
        "Content-Type": "application/json",
        **signed_headers(
            secret=secret, message_id=str(ready.key), seconds=int(ready.at.timestamp()), body=body
        ),
    }
    try:
        return ask(Question(ready.address, "POST", headers, body), our_guard(), BOUNDS)
    except NoAnswer as no:
        words = f"It did not arrive: {no}."
        raise (Unsure(words) if no.why in MAY_HAVE_IT else Refused(words)) from None
