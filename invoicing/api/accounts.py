"""One farm's account, its statement, and who owes how much since when."""

from django.http import HttpResponse
from django.utils.text import slugify
from rest_framework import serializers

from farms.models import Farm
from invoicing.api.mails import MailsTold
from invoicing.api.money import CURRENCY, MoneyShown
from invoicing.api.periods import DAYS, days_asked
from invoicing.documents.statement_pdf import statement_pdf
from invoicing.domain.account_lines import AccountLine, AccountWhat, FarmAccount
from invoicing.domain.ageing import Age
from invoicing.selectors.aged_debtors import AgedDebtors, Debtor, aged_debtors
from invoicing.selectors.farm_account import farm_account
from invoicing.selectors.statement_content import statement_content
from invoicing.services.send_statement import send_statement
from trimops.accounts.actions import Action
from trimops.api.fields import Day, Exactly, OneOf
from trimops.api.kinds import FileApi, StepApi, ToldApi
from trimops.api.op import Op, Said
from trimops.kernel.clock import local_day
from trimops.web.page_rates import Cost
from trimops.web.pdf_answer import pdf_answer

CURRENCY_CODE = r"^[A-Z]{3}$"
PAYMENTS = (AccountWhat.PAYMENT, AccountWhat.PAID_BACK)


class AccountLineShown(serializers.Serializer):  # type: ignore[type-arg]
    """One move with what is owed after it. `amount` above nought: the farm owes more."""

    day = Day(source="move.day")
    what = OneOf(AccountWhat, source="move.what")
    amount = MoneyShown("", help_text="Above nought: the farm owes more.")
    balance = MoneyShown("", help_text="Owed after it.")
    number = serializers.CharField(source="move.number")
    due_on = Day(source="move.due_on", allow_null=True)
    more = serializers.CharField(source="move.more")
    invoice = serializers.IntegerField(allow_null=True)
    payment = serializers.IntegerField(allow_null=True)

    def to_representation(self, instance: AccountLine) -> dict[str, object]:
        move = instance.move
        is_payment = move.what in PAYMENTS
        told = {"move": move, "amount": move.amount, "balance": instance.balance}
        keys = {"invoice": None if is_payment else move.key, "payment": move.key if is_payment else None}
        found: dict[str, object] = super().to_representation({**told, **keys})
        return found


class AccountTold(serializers.Serializer):  # type: ignore[type-arg]
    """The account over some days; below nought it is to the farm's good."""

    currency = serializers.CharField(help_text=CURRENCY)
    first = Day()
    last = Day()
    opening = MoneyShown("", help_text="Owed before the first day.")
    closing = MoneyShown("", help_text="Owed after the last day.")
    lines = AccountLineShown(many=True)


class DaysWord(serializers.Serializer):  # type: ignore[type-arg]
    """Of which days."""

    first = Day()
    last = Day()

    def validate(self, attrs: Said) -> Said:
        if attrs["last"] < attrs["first"]:
            raise serializers.ValidationError({"last": "It comes before the first day."})
        return attrs


class AgesShown(serializers.Serializer):  # type: ignore[type-arg]
    """What is open, by how many days it is late."""

    not_yet_due = MoneyShown("")
    to_30 = MoneyShown("")
    to_60 = MoneyShown("")
    to_90 = MoneyShown("")
    over_90 = MoneyShown("")


class DebtorShown(serializers.Serializer):  # type: ignore[type-arg]
    """One farm with its payer. `unused`: money received or credited and not set against anything yet."""

    farm = serializers.IntegerField(source="farm_id")
    farm_name = serializers.CharField()
    payer_name = serializers.CharField()
    ages = AgesShown()
    total = MoneyShown()
    overdue = MoneyShown()
    unused = MoneyShown()

    def to_representation(self, instance: Debtor) -> dict[str, object]:
        ages = {age.value: amount for age, amount in zip(Age, instance.amounts, strict=True)}
        told = {name: getattr(instance, name) for name in ("farm_id", "farm_name", "payer_name", "currency")}
        sums = {name: getattr(instance, name) for name in ("total", "overdue", "unused")}
        found: dict[str, object] = super().to_representation({**told, **sums, "ages": ages})
        return found


class OwedTold(serializers.Serializer):  # type: ignore[type-arg]
    """Everybody who owes in one currency, the largest overdue sum first."""

    currency = serializers.CharField(help_text=CURRENCY)
    total = MoneyShown()
    overdue = MoneyShown()
    unused = MoneyShown()
    debtors = DebtorShown(many=True)


class FarmAccountApi(ToldApi):
    """A farm's account: every paper and payment with what is owed after it, in the business's currency or another."""

    also_refuses = (422,)
    ops = {
        "get": Op(
            Action.SEE_MONEY,
            "read_farm_account",
            "A farm's account",
            shows=AccountTold,
            query={
                **DAYS,
                "currency": Exactly(CURRENCY_CODE, min_length=3, max_length=3, help_text="Of ISO 4217."),
            },
        )
    }

    def told(self) -> FarmAccount:
        farm = self.fetch(Farm, self.kwargs["pk"], "business", "payer")
        return farm_account(self.scope, farm, *days_asked(self), self.asked.get("currency", ""))


class StatementFile(FileApi):
    """A farm's statement of account as PDF."""

    costs = {"get": Cost.PAPER}
    also_refuses = (422,)
    ops = {
        "get": Op(
            Action.SEE_MONEY,
            "read_farm_statement",
            "A farm's statement as PDF",
            media="application/pdf",
            query=DAYS,
        )
    }

    def file(self) -> HttpResponse:
        farm = self.fetch(Farm, self.kwargs["pk"], "business", "payer")
        first, last = days_asked(self)
        content = statement_content(self.scope, farm, first, last, self.now)
        return pdf_answer(statement_pdf(content), f"statement-{slugify(farm.name) or farm.pk}-{last}")


class SendStatementApi(StepApi[Farm]):
    """A farm's statement, drawn now, goes to its addresses for money papers. Refused: `no_address`."""

    model = Farm
    related = ("business", "payer")
    ops = {
        "post": Op(
            Action.KEEP_MONEY,
            "send_farm_statement",
            "Send a farm's statement",
            takes=DaysWord,
            shows=MailsTold,
            repeats=True,
        )
    }

    def act(self, row: Farm, content: Said) -> object:
        days = {"first": content["first"], "last": content["last"]}
        return {"mails": send_statement(farm=row, **days, at=self.now, by=self.seat.user)}


class OwedApi(ToldApi):
    """Who owes how much, and since when."""

    ops = {
        "get": Op(
            Action.SEE_MONEY,
            "read_owed",
            "Who owes how much",
            shows=OwedTold,
            query={
                "currency": Exactly(
                    CURRENCY_CODE, min_length=3, max_length=3, help_text="The business's, if nothing is said."
                )
            },
        )
    }

    def told(self) -> AgedDebtors:
        wanted = self.asked.get("currency", self.seat.business.currency)
        books = aged_debtors(self.scope, local_day(self.now, self.seat.business.zone))
        return next((book for book in books if book.currency == wanted), AgedDebtors(wanted, ()))
