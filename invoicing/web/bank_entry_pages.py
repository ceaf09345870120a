"""One booking on the account, and one CSV of which the columns are to be told."""

from decimal import Decimal

from django.contrib import messages
from django.http import HttpRequest, HttpResponse, HttpResponseBase
from django.shortcuts import redirect
from django.utils.functional import cached_property

from farms.models import Farm
from invoicing.domain.bank_csv import CsvMapping, csv_rows, guess_mapping, read_bank_csv
from invoicing.domain.bank_file import ReadStatement, UnreadableBankFile
from invoicing.models import BankEntry, BankFile, BankMapping, Invoice, Payment
from invoicing.selectors.match_view import MatchRow, match_rows
from invoicing.selectors.open_invoices import open_invoices
from invoicing.selectors.paid_back_by import BackChoice, what_it_may_pay_back
from invoicing.services.match_entry import match_entry, match_entry_paid_back
from invoicing.services.read_bank_file import read_bank_file
from invoicing.services.save_bank_mapping import mapping_of, refuse_unclear, save_bank_mapping
from invoicing.services.set_aside_entry import bring_back_entry, set_aside_entry
from invoicing.web.bank_forms import MappingForm, initial_of
from invoicing.web.bank_pages import kept_file, tell_reading
from invoicing.web.payment_forms import SharesForm, WhyForm, shared_out
from trimops.accounts.actions import Action
from trimops.kernel.errors import RuleBroken
from trimops.web.asked import number_asked
from trimops.web.scoped_page import ScopedPage

PREVIEWED = 8


class BankEntryPage(ScopedPage):
    """Choose the farm (by what is proposed, or from all), then how much of it pays which invoice."""

    does = Action.KEEP_BANK
    template = "invoicing/bank_entry.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        return self._show(self._farm())

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        entry, farm = self.entry, self._farm()
        if farm is None:
            return self._show(None, status=400)
        form = SharesForm(open_invoices(self.scope, farm, entry.currency), request.POST)
        if form.is_valid():
            try:
                match_entry(entry=entry, farm=farm, shares=form.shares, at=self.now, by=self.seat.user)
            except RuleBroken as fault:
                form.add_error(None, fault.message)
            else:
                messages.success(request, f"Booked for {farm.name}.")
                return redirect("bank")
        return self._show(farm, form, status=400)

    @cached_property
    def entry(self) -> BankEntry:
        return self.fetch(BankEntry, self.kwargs["pk"], "statement__file")

    @cached_property
    def match(self) -> MatchRow:
        """Reckoned against every open invoice, so once a request and only where it is wanted."""
        return match_rows(self.scope, [self.entry])[0]

    def _farm(self) -> Farm | None:
        """The farm asked for, else that of the best proposal."""
        key = number_asked(self.request.GET.get("farm"))
        if key is None and (best := self.match.best):
            key = best.farm
        return self.fetch(Farm, key, "payer") if key else None

    def _show(self, farm: Farm | None, form: SharesForm | None = None, status: int = 200) -> HttpResponse:
        entry, match = self.entry, self.match
        if form is None and farm is not None:
            rows = open_invoices(self.scope, farm, entry.currency)
            is_best = match.best is not None and match.best.farm == farm.pk
            proposed = {f"share_{share.key}": share.amount for share in match.shares} if is_best else {}
            form = SharesForm(rows, initial=proposed or shared_out(entry.amount, rows, entry.currency))
        farms = Farm.objects.within(self.scope).filter(erased_at__isnull=True)
        payments = Payment.objects.within(self.scope).filter(bank_entry=entry).select_related("farm")
        told = {"entry": entry, "match": match, "farm": farm, "form": form, "farms": list(farms)}
        told |= {"booked": payments.standing().first(), "why_form": WhyForm()}
        told["back"] = what_it_may_pay_back(self.scope, entry) if entry.amount < 0 else []
        return self.show(told, status=status)


class SetAsideButton(ScopedPage):
    """It pays no invoice; or it is asked about again."""

    does = Action.KEEP_BANK

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        entry = self.fetch(BankEntry, pk)
        if request.POST.get("act") == "back":
            bring_back_entry(entry=entry)
            return redirect("bank_entry", pk)
        form = WhyForm(request.POST)
        because = form.cleaned_data["because"] if form.is_valid() else ""
        set_aside_entry(entry=entry, because=because, at=self.now)
        messages.success(request, "Set aside.")
        return redirect("bank")


class PaidBackButton(ScopedPage):
    """Money that went out paid back a payment's rest (`payment`) or a credit note (`invoice`)."""

    does = Action.KEEP_BANK

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        entry = self.fetch(BankEntry, pk)
        kind, _, key = request.POST.get("of", "").partition("-")
        of_note, number = kind == BackChoice.CREDIT_NOTE, number_asked(key)
        if number is None:
            messages.warning(request, "Say what it paid back.")
            return redirect("bank_entry", pk)
        source = self.fetch(Invoice, number) if of_note else self.fetch(Payment, number)
        match_entry_paid_back(entry=entry, of=source, at=self.now, by=self.seat.user)
        messages.success(request, "Booked as paid back.")
        return redirect("bank")


class BankReadPage(ScopedPage):
    """Which column holds what, with the first rows beside it; then the file is read."""

    does = Action.KEEP_BANK
    template = "invoicing/bank_read.html"

    def get(self, request: HttpRequest, pk: int) -> HttpResponse:
        file = kept_file(self, pk)
        key = number_asked(request.GET.get("mapping"))
        mappings = BankMapping.objects.within(self.scope)
        chosen = mappings.filter(pk=key).first() if key else mappings.order_by("-pk").first()
        mapping = mapping_of(chosen) if chosen else guess_mapping(bytes(file.content))
        return self._show(file, mapping, name=chosen.name if chosen else "")

    def post(self, request: HttpRequest, pk: int) -> HttpResponseBase:
        file = kept_file(self, pk)
        guess = CsvMapping(
            encoding=request.POST.get("encoding", "utf-8-sig"), delimiter=request.POST.get("delimiter") or ";"
        )
        form = MappingForm(_heads(file, guess), request.POST)
        if not form.is_valid():
            return self._show(file, guess, form, status=400)
        mapping, name = form.mapping(), form.cleaned_data["name"].strip()
        if request.POST.get("act") != "read":
            return self._show(file, mapping, form)
        try:
            refuse_unclear(mapping)
            reading = read_bank_file(file=file, at=self.now, by=self.seat.user, mapping=mapping)
        except RuleBroken as fault:
            form.add_error(None, fault.message)
            return self._show(file, mapping, form, status=400)
        if name:
            save_bank_mapping(business=self.seat.business, name=name, mapping=mapping)
        tell_reading(request, reading)
        return redirect("bank")

    def _show(
        self,
        file: BankFile,
        mapping: CsvMapping,
        form: MappingForm | None = None,
        name: str = "",
        status: int = 200,
    ) -> HttpResponse:
        form = form or MappingForm(_heads(file, mapping), initial=initial_of(mapping, name))
        read, fault = _tried(file, mapping, self.seat.business.currency)
        told = {"file": file, "form": form, "rows": _rows(file, mapping)[:PREVIEWED], "fault": fault}
        told |= {"read": read.lines[:PREVIEWED] if read else (), "count": len(read.lines) if read else 0}
        told["sum"] = sum((line.amount for line in read.lines), Decimal(0)) if read else None
        told["mappings"] = list(BankMapping.objects.within(self.scope))
        return self.show(told, status=status)


def _rows(file: BankFile, mapping: CsvMapping) -> list[tuple[int, list[str]]]:
    try:
        return csv_rows(bytes(file.content), mapping.encoding, mapping.delimiter)
    except (UnreadableBankFile, LookupError, TypeError):
        return []


def _heads(file: BankFile, mapping: CsvMapping) -> list[str]:
    """The widest of the first rows, by which columns are named."""
    rows = [row for _, row in _rows(file, mapping)[:20]]
    width = max((len(row) for row in rows), default=1)
    named = next((row for row in rows if len(row) == width), [""] * width)
    return [cell.strip() or "(no head)" for cell in named]


def _tried(file: BankFile, mapping: CsvMapping, currency: str) -> tuple[ReadStatement | None, str]:
    """The file read with that mapping, or why it cannot be."""
    try:
        refuse_unclear(mapping)
        return read_bank_csv(bytes(file.content), mapping, currency), ""
    except (UnreadableBankFile, LookupError) as fault:
        return None, str(fault)
    except RuleBroken as fault:
        return None, fault.message
