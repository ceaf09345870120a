"""One business played through a year by its services: visits, drafts, papers, payments. And all that tells of it."""

from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from decimal import Decimal
from itertools import count

from farms.models import Farm
from invoicing.domain.credit_lines import CreditAsk
from invoicing.domain.settling import PaymentMethod
from invoicing.models import Invoice, Payment
from invoicing.services.credit_invoice import draft_credit_note
from invoicing.services.draft_invoice import draft_invoice
from invoicing.services.issue_invoice import issue_invoice
from invoicing.services.note_payment import MoneyReceived, note_payment
from invoicing.services.open_draft import Hand
from tests.factories import House, blocked_foot, finish, make_cow, put_down, trimmed_foot, under_way
from visits.models import Visit


@dataclass
class MoneyYear:
    """The hands of the office."""

    house: House

    def __post_init__(self) -> None:
        self._numbers = count(200)

    def hand(self, at: datetime, reason: str = "Agreed on the telephone") -> Hand:
        return Hand(self.house.office, at, reason)

    def work(self, farm: Farm, at: datetime, cows: int = 2, **changes: object) -> Visit:
        """A finished visit of three hours: the first cow with a block, the others cut."""
        visit = under_way(farm, self.house.van, at, **changes)
        for n in range(cows):
            cow = make_cow(farm, str(next(self._numbers)))
            put_down(visit, cow, trimmed_foot() if n else blocked_foot())
        return finish(visit, self.house.trimmer)

    def draft(self, visit: Visit) -> Invoice:
        made = draft_invoice(visit=visit, at=visit.finished_at)
        assert made is not None
        return made

    def issue(self, draft: Invoice, at: datetime) -> Invoice:
        return issue_invoice(invoice=draft, at=at, by=self.house.office)

    def bill(self, farm: Farm, at: datetime, cows: int = 2, **changes: object) -> Invoice:
        """Worked, drafted and issued on the next day."""
        return self.issue(self.draft(self.work(farm, at, cows, **changes)), at + timedelta(days=1))

    def credit(
        self, invoice: Invoice, at: datetime, asks: list[CreditAsk] | None = None, *, again: bool = False
    ) -> Invoice:
        note = draft_credit_note(
            invoice=invoice,
            asks=asks,
            reason="A cow counted twice",
            work_may_be_billed_again=again,
            at=at,
            by=self.house.office,
        )
        return self.issue(note, at)

    def pay(
        self,
        farm: Farm,
        amount: Decimal | str,
        at: datetime,
        shares: dict[Invoice, str | Decimal] | None = None,
    ) -> Payment:
        told = {invoice.pk: Decimal(part) for invoice, part in (shares or {}).items()}
        money = MoneyReceived(
            farm, at.date(), Decimal(amount), farm.business.currency, PaymentMethod.CASH, told
        )
        return note_payment(money=money, at=at, by=self.house.office)


def at(month: int, day: int, hour: int = 10, year: int = 2026) -> datetime:
    return datetime(year, month, day, hour, tzinfo=UTC)


def day(month: int, day: int, year: int = 2026) -> date:
    return date(year, month, day)
