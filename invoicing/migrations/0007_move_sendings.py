"""The mails of the money move down among all that leaves the house."""

import hashlib
import re
import secrets
from datetime import timedelta

from django.conf import settings
from django.db import migrations
from django.utils import timezone

JOB = "trimops.send_outgoing"
LIFE = timedelta(days=90)
LINK_BEGINS = "\n\nWhat it is for, how to pay it and what of it is paid also stands here"
LINK = f"{LINK_BEGINS}:\n\n{{secret}}\n\nWhoever has this address can open it.\n"
NOT_KNOWN = "The line broke while the mail was handed over: nobody knows whether it went."
EVENTS = {
    "queued": "waiting",
    "going": "going",
    "handed_over": "went",
    "failed": "failed",
    "unclear": "failed",
}
EVENTS_BACK = {
    **{new: old for old, new in EVENTS.items() if old != "unclear"},
    "lapsed": "failed",
    "left": "failed",
}


def move_sendings(apps, schema_editor):
    """Those that have their message are left alone, so that running it again does nothing."""
    Sending = apps.get_model("invoicing", "Sending")
    rows = Sending.objects.filter(outgoing__isnull=True).select_related(
        "business", "invoice__papers", "reminder__invoice"
    )
    for row in rows.iterator(chunk_size=50):
        outgoing = _outgoing(apps, row)
        outgoing.save()
        _parts(apps, row, outgoing)
        _events(apps, row, outgoing)
        if outgoing.state == "waiting":
            _make_link(apps, row, outgoing)
            due = outgoing.next_try_at or timezone.now()
            errand = {"job": JOB, "ids": {"outgoing_id": outgoing.pk}, "due_at": due}
            apps.get_model("errands", "Errand").objects.create(business_id=row.business_id, **errand)
        row.outgoing = outgoing
        row.save(update_fields=["outgoing", "link"])


def _outgoing(apps, row):
    state, next_try_at = _state(row)
    return apps.get_model("outbox", "Outgoing")(
        business_id=row.business_id,
        key=row.message_id,
        channel="mail",
        topic=row.paper,
        farm_id=row.farm_id,
        address=row.address,
        subject=row.subject,
        body=f"{row.body}{LINK}" if row.with_link else f"{row.body}\n",
        reply_to=row.business.email,
        state=state,
        written_at=row.queued_at,
        written_by_id=row.queued_by_id,
        tries=row.tries,
        next_try_at=next_try_at,
        began_at=row.began_at,
        went_at=row.handed_over_at,
        last_words=row.last_words or (NOT_KNOWN if row.state == "unclear" else ""),
        may_have_gone=row.state in ("going", "unclear"),
    )


def _state(row):
    """The state, and when it is tried again. What was going when the program was stopped goes again."""
    if row.left_at is not None:
        return "left", None
    if row.state in ("queued", "going"):
        return "waiting", row.next_try_at
    if row.state == "failed" and row.next_try_at is not None:
        return "waiting", row.next_try_at
    return EVENTS[row.state], None


def _parts(apps, row, outgoing):
    """A statement is kept nowhere else; the papers of an invoice only matter where the mail may still go."""
    parts = []
    if row.attachment is not None:
        parts.append((row.attachment_name or "paper.pdf", "application/pdf", bytes(row.attachment)))
    if outgoing.state != "went" and row.attachment is None:
        parts += _papers(row)
    for name, media_type, content in parts:
        apps.get_model("outbox", "OutgoingPart").objects.create(
            business_id=row.business_id, outgoing=outgoing, name=name, media_type=media_type, content=content
        )


def _papers(row):
    found = []
    if row.reminder is not None and row.reminder.pdf:
        name = f"reminder-{_name(row.reminder.invoice.number)}.pdf"
        found.append((name, "application/pdf", bytes(row.reminder.pdf)))
    if row.invoice is not None and row.invoice.papers is not None:
        papers, name = row.invoice.papers, _name(row.invoice.number)
        found.append((f"{name}.pdf", "application/pdf", bytes(papers.pdf)))
        if row.with_xml and papers.ubl and row.paper == "invoice":
            found.append((f"{name}.xml", "application/xml", bytes(papers.ubl)))
    return found


def _name(number):
    return re.sub(r"[^\w.-]+", "-", number, flags=re.ASCII).strip("-.") or "paper"


def _events(apps, row, outgoing):
    new = apps.get_model("outbox", "OutgoingEvent").objects
    for event in apps.get_model("invoicing", "SendingEvent").objects.filter(sending=row).order_by("at", "id"):
        is_left = event.words.startswith("Left by ")
        state, words = "left" if is_left else EVENTS[event.state], event.words
        if event.state == "unclear" and not is_left:
            words = words or NOT_KNOWN
        new.create(business_id=row.business_id, outgoing=outgoing, at=event.at, state=state, words=words)


def _make_link(apps, row, outgoing):
    """A link was made for each try; now it is made when the mail is written."""
    if not row.with_link or row.invoice_id is None:
        return
    secret, now = secrets.token_urlsafe(32), timezone.now()
    row.link = apps.get_model("invoicing", "InvoiceLink").objects.create(
        business_id=row.business_id,
        invoice_id=row.invoice_id,
        secret_hash=hashlib.sha256(secret.encode()).hexdigest(),
        made_at=now,
        expires_at=now + LIFE,
    )
    outgoing.secret = f"{settings.SITE_ADDRESS}/bill/{secret}/"
    outgoing.save(update_fields=["secret"])


def move_back(apps, schema_editor):
    """What the older table can say; messages that are no papers of the money have no place in it and go."""
    Sending, Outgoing = apps.get_model("invoicing", "Sending"), apps.get_model("outbox", "Outgoing")
    for row in Sending.objects.select_related("outgoing").iterator(chunk_size=50):
        _fill(apps, row, row.outgoing)
        row.outgoing = None
        row.save()
    apps.get_model("errands", "Errand").objects.filter(job=JOB).delete()
    Outgoing.objects.all().delete()


def _fill(apps, row, outgoing):
    new = apps.get_model("outbox", "OutgoingEvent").objects.filter(outgoing=outgoing).order_by("at", "id")
    row.address, row.subject, row.message_id = outgoing.address, outgoing.subject, outgoing.key
    row.body = outgoing.body.partition(LINK_BEGINS)[0].rstrip("\n")
    row.queued_at, row.queued_by_id = outgoing.written_at, outgoing.written_by_id
    row.tries, row.began_at, row.handed_over_at = outgoing.tries, outgoing.began_at, outgoing.went_at
    row.last_words, row.next_try_at = outgoing.last_words, outgoing.next_try_at
    row.state = EVENTS_BACK[outgoing.state]
    if outgoing.state == "waiting" and outgoing.next_try_at is not None:
        row.state = "failed"
    if outgoing.state in ("failed", "left") and outgoing.may_have_gone:
        row.state = "unclear"
    if outgoing.state == "left":
        left = new.filter(state="left").last()
        row.left_at = left.at if left else outgoing.written_at
    part = apps.get_model("outbox", "OutgoingPart").objects.filter(outgoing=outgoing).order_by("id").first()
    if row.paper == "statement" and part is not None:
        row.attachment, row.attachment_name = bytes(part.content), part.name
    events = apps.get_model("invoicing", "SendingEvent").objects
    for event in new:
        events.create(
            business_id=row.business_id,
            sending=row,
            at=event.at,
            state=EVENTS_BACK[event.state],
            words=event.words,
        )


class Migration(migrations.Migration):
    dependencies = [("invoicing", "0006_outbox_columns")]

    operations = [migrations.RunPython(move_sendings, move_back)]
