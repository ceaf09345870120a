"""The bank: files read in, bookings with what they may pay, accepted at one press."""

import re
from decimal import Decimal

from django.contrib import messages
from django.core.paginator import Paginator
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect

from farms.models import Farm
from invoicing.domain.camt053 import looks_like_xml
from invoicing.domain.matching import TO_LOOK_AT
from invoicing.models import BankEntry, BankFile
from invoicing.selectors.bank_view import (
    bank_counts,
    entries_done,
    entries_gone_out,
    entries_to_match,
    files_waiting,
    statements_read,
)
from invoicing.selectors.match_view import MatchRow, match_rows
from invoicing.services.keep_bank_file import keep_bank_file
from invoicing.services.match_entries import Accepted, match_entries
from invoicing.services.read_bank_file import Reading, read_bank_file
from invoicing.web.bank_forms import BankFileForm
from trimops.accounts.actions import Action
from trimops.kernel.errors import RuleBroken
from trimops.web.scoped_page import ScopedPage
from trimops.web.templatetags.figures import things

PER_PAGE = 100
DONE_PER_PAGE = 60
_SHARE = r"[0-9]{1,15}=[0-9]{1,10}(?:\.[0-9]{1,4})?"
_TICK = re.compile(rf"[0-9]{{1,15}}:[0-9]{{1,15}}:{_SHARE}(?:,{_SHARE})*")


class BankPage(ScopedPage):
    does = Action.KEEP_BANK
    template = "invoicing/bank.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        return self._show(BankFileForm())

    def post(self, request: HttpRequest) -> HttpResponseBase:
        """A file comes in: an XML is read at once, of a CSV the columns are asked."""
        form = BankFileForm(request.POST, request.FILES)
        if not form.is_valid():
            return self._show(form, 400)
        file = form.cleaned_data["file"]
        content = file.read()
        try:
            row = keep_bank_file(
                business=self.seat.business,
                file_name=file.name,
                content=content,
                at=self.now,
                by=self.seat.user,
            )
            if not looks_like_xml(content):
                return redirect("bank_read", row.pk)
            reading = read_bank_file(file=row, at=self.now, by=self.seat.user)
        except RuleBroken as fault:
            form.add_error("file", fault.message)
            return self._show(form, 400)
        tell_reading(request, reading)
        return redirect("bank")

    def _show(self, form: BankFileForm, status: int = 200) -> HttpResponse:
        page = Paginator(entries_to_match(self.scope), PER_PAGE).get_page(self.request.GET.get("page"))
        rows = match_rows(self.scope, list(page))
        sure = [row for row in rows if row.is_sure]
        likely = [row for row in rows if row.best and not row.is_sure and row.best.confidence >= TO_LOOK_AT]
        told = {"page": page, "sure": sure, "likely": likely, "form": form}
        told["open"] = [row for row in rows if row.best is None]
        told["ticks"] = [(row, tick_of(row)) for row in sure]
        told |= {"counts": bank_counts(self.scope), "statements": statements_read(self.scope)}
        told |= {"gone_out": entries_gone_out(self.scope)[:40], "waiting": files_waiting(self.scope)}
        return self.show(told, status=status)


class BankDonePage(ScopedPage):
    """What was matched or set aside."""

    does = Action.KEEP_BANK
    template = "invoicing/bank_done.html"

    def get(self, request: HttpRequest) -> HttpResponse:
        rows = entries_done(self.scope)
        return self.show({"page": Paginator(rows, DONE_PER_PAGE).get_page(request.GET.get("page"))})


class AcceptButton(ScopedPage):
    """Book the proposals that are ticked, just as they stood on the page."""

    does = Action.KEEP_BANK

    def post(self, request: HttpRequest) -> HttpResponseBase:
        ticks = [tick for text in request.POST.getlist("tick") if (tick := read_tick(text))]
        entries = BankEntry.objects.within(self.scope).in_bulk({tick[0] for tick in ticks})
        farms = Farm.objects.within(self.scope).in_bulk({tick[1] for tick in ticks})
        accepted = [
            Accepted(entries[entry], farms[farm], shares)
            for entry, farm, shares in ticks
            if entry in entries and farm in farms
        ]
        booked, refused = match_entries(accepted=accepted, at=self.now, by=self.seat.user)
        if booked:
            messages.success(request, f"{things(len(booked), 'payment,payments')} booked.")
        for entry, why in refused:
            messages.warning(request, f"{entry.party_name or 'A booking'} of {entry.booked_on:%-d %b}: {why}")
        if not accepted:
            messages.warning(request, "Nothing was ticked.")
        return redirect("bank")


def tick_of(row: MatchRow) -> str:
    """A proposal in one word, so that what is accepted is what was seen: `entry:farm:invoice=amount,...`."""
    shares = ",".join(f"{share.key}={share.amount}" for share in row.shares)
    return f"{row.entry.pk}:{row.best.farm if row.best else 0}:{shares}"


def read_tick(text: str) -> tuple[int, int, dict[int, Decimal]] | None:
    """The proposal again; None for what is none."""
    if not _TICK.fullmatch(text):
        return None
    entry, farm, shares = text.split(":")
    parts = [share.split("=") for share in shares.split(",")]
    return int(entry), int(farm), {int(key): Decimal(amount) for key, amount in parts}


def tell_reading(request: HttpRequest, reading: Reading) -> None:
    """Say what came of a file."""
    known = f", {reading.known} had come before" if reading.known else ""
    messages.success(request, f"{things(reading.new, 'entry,entries')} came in{known}.")
    for words in reading.warnings:
        messages.warning(request, words)


def kept_file(page: ScopedPage, pk: int) -> BankFile:
    """The file within the scope, 404 else."""
    return page.fetch(BankFile, pk, "business")
