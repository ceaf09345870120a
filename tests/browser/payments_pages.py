"""The addresses of payments, accounts and the bank, with something on each page."""

from collections.abc import Iterator
from datetime import timedelta
from decimal import Decimal
from pathlib import Path

from django.urls import reverse
from django.utils import timezone

from invoicing.domain.settling import PaymentMethod
from invoicing.models import BankEntry
from invoicing.services.keep_bank_file import keep_bank_file
from invoicing.services.note_payment import MoneyReceived, note_payment
from invoicing.services.read_bank_file import read_bank_file
from tests.browser.small_round import Round

BANK = Path(__file__).parents[2] / "fixtures" / "bank"
CSV = b"Day,Amount,Who,What\n2026-03-02,12.50,A. Farmer,Feet\n2026-03-03,-8.00,Blocks & Glue,Blocks\n"


def payments_pages(r: Round) -> Iterator[str]:
    """Money came in part, and the bank has a booking that is sure, one to look at and others."""
    now, farm = timezone.now(), r.issued.farm
    yesterday = (now - timedelta(days=1)).date()
    shares = {r.issued.pk: Decimal(10)}
    money = MoneyReceived(farm, yesterday, Decimal(15), r.issued.currency, PaymentMethod.CASH, shares)
    payment = note_payment(money=money, at=now, by=r.house.office)
    csv, sure = _bank(r)
    yield from (reverse(name) for name in ("money_overdue", "payments", "payment_new", "bank", "bank_done"))
    yield f"{reverse('payment_new')}?farm={farm.pk}&invoice={r.issued.pk}"
    for name in ("payment", "payment_take_back", "payment_pay_back"):
        yield reverse(name, args=[payment.pk])
    yield reverse("settled_undo", args=[payment.allocations.within(r.house.scope).get().pk])
    yield reverse("invoice_settled", args=[r.issued.pk])
    yield reverse("farm_account", args=[farm.pk])
    yield reverse("bank_read", args=[csv])
    yield f"{reverse('bank_entry', args=[sure])}?farm={farm.pk}"


def _bank(r: Round) -> tuple[int, int]:
    """Keys of a CSV that waits, and of a booking that carries the reference of the issued invoice."""
    told = {"business": r.house.business, "at": timezone.now(), "by": r.house.office}
    csv = keep_bank_file(file_name="bank.csv", content=CSV, **told)
    content = (BANK / "camt053_v02.xml").read_text().replace('Ccy="EUR"', f'Ccy="{r.issued.currency}"')
    content = content.replace("RF73INV20260042", r.issued.creditor_reference)
    content = content.replace("2026-03-02", str(timezone.now().date()))
    xml = keep_bank_file(file_name="statement.xml", content=content.encode(), **told)
    read_bank_file(file=xml, at=told["at"], by=told["by"])
    sure = BankEntry.objects.within(r.house.scope).get(reference=r.issued.creditor_reference)
    return csv.pk, sure.pk
