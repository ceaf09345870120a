"""Files of the bank, and their bookings, as the API shows them and takes them."""

import base64
from dataclasses import asdict

from rest_framework import serializers

from farms.models import Farm
from invoicing.api.money import CURRENCY, Kept, MoneyShown, several
from invoicing.api.payment_shown import ShareWord, each_once
from invoicing.domain.bank_csv import DAY_FORMATS, DELIMITERS, ENCODINGS, CsvMapping
from invoicing.models import BankEntry, BankFile, BankMapping
from invoicing.selectors.match_view import MatchRow
from invoicing.services.save_bank_mapping import mapping_of
from trimops.api.fields import Exactly
from trimops.api.op import Said
from trimops.api.rows import RowField

BASE64 = r"^([A-Za-z0-9+/]{4})*([A-Za-z0-9+/]{2}==|[A-Za-z0-9+/]{3}=)?$"
MOST_LETTERS = 1_900_000
MOST_COLUMN = 99


def column(*, required: bool = False) -> serializers.IntegerField:
    """A column of the file, counted from 0; null: there is none."""
    return serializers.IntegerField(
        min_value=0, max_value=MOST_COLUMN, required=required, allow_null=not required
    )


def rows_of_heads(help_text: str, usual: int) -> serializers.IntegerField:
    """How many rows are no bookings."""
    return serializers.IntegerField(min_value=0, max_value=50, default=usual, help_text=help_text)


class MappingWord(serializers.Serializer):  # type: ignore[type-arg]
    """Which column of a CSV holds what (counted from 0), and how days and amounts are written.

    The amount is in one column with its sign, or beside a word in `mark`, or in two: `credit` and `debit`.
    """

    encoding = serializers.ChoiceField(ENCODINGS, default="utf-8-sig")
    delimiter = serializers.ChoiceField(DELIMITERS, default=";")
    decimal = serializers.ChoiceField([",", "."], default=",")
    day_format = serializers.ChoiceField(list(DAY_FORMATS), default="%d.%m.%Y")
    header_rows = rows_of_heads("Rows of heads above.", 1)
    footer_rows = rows_of_heads("Rows of sums below.", 0)
    day = column(required=True)
    amount = column()
    credit = column()
    debit = column()
    mark = column()
    credit_word = serializers.CharField(max_length=20, allow_blank=True, default="")
    debit_word = serializers.CharField(max_length=20, allow_blank=True, default="")
    party = column()
    account = column()
    reference = column()
    bank_reference = column()
    text = serializers.ListField(
        child=serializers.IntegerField(min_value=0, max_value=MOST_COLUMN), max_length=20, default=list
    )


def mapping_from(said: Said) -> CsvMapping:
    """The mapping as the reader of files takes it."""
    return CsvMapping(**{**said, "text": tuple(said["text"])})


class FileWord(serializers.Serializer):  # type: ignore[type-arg]
    """A statement as the bank gives it: CAMT.053 (XML) or CSV."""

    file_name = serializers.CharField(max_length=200)
    content = Exactly(
        BASE64,
        min_length=4,
        max_length=MOST_LETTERS,
        help_text="The bytes of the file in base64, 1.4 MB at most.",
    )

    def validate_content(self, content: str) -> bytes:
        return base64.b64decode(content)


class ReadWord(serializers.Serializer):  # type: ignore[type-arg]
    """How a CSV is written, and a name to keep that under for the next file."""

    mapping = MappingWord()
    keep_as = serializers.CharField(max_length=60, required=False)


class BankFileShown(Kept):
    """A file of the bank. `read_at` null: the columns of a CSV are not told yet."""

    class Meta:
        model = BankFile
        fields = ["id", "file_name", "sha256", "kept_at", "read_at"]
        read_only_fields = fields


class ReadingTold(serializers.Serializer):  # type: ignore[type-arg]
    """What came of a file: bookings that are new, those that had come already, and what a person should know."""

    file = serializers.IntegerField(help_text="Id of the file.")
    is_read = serializers.BooleanField(help_text="false: a CSV of which the columns are to be told first.")
    new = serializers.IntegerField(min_value=0)
    known = serializers.IntegerField(min_value=0)
    warnings = serializers.ListField(child=serializers.CharField())


class ColumnsTold(serializers.Serializer):  # type: ignore[type-arg]
    """A first guess at how a CSV is written, and its first rows; what else is where, a person says."""

    mapping = MappingWord()
    rows = serializers.ListField(child=serializers.ListField(child=serializers.CharField()))


class BankMappingShown(Kept):
    """How a bank writes its CSV, as it was kept."""

    mapping = MappingWord(read_only=True)

    class Meta:
        model = BankMapping
        fields = ["id", "name", "mapping"]
        read_only_fields = fields

    def to_representation(self, instance: BankMapping) -> dict[str, object]:  # type: ignore[override]
        told = asdict(mapping_of(instance))
        return {"id": instance.pk, "name": instance.name, "mapping": MappingWord(told).data}


class BankEntryShown(Kept):
    """One booking on the account. Below nought: it left the account."""

    currency = serializers.CharField(read_only=True, max_length=3, help_text=CURRENCY)
    amount = MoneyShown()
    charges = MoneyShown(help_text="Kept back by banks before it was booked.")
    file = serializers.IntegerField(source="statement.file_id", read_only=True)

    class Meta:
        model = BankEntry
        fields = [
            *("id", "file", "booked_on", "currency", "amount", "charges", "party_name", "party_account"),
            *("reference", "text", "is_reversal", "set_aside_at", "set_aside_because"),
        ]
        read_only_fields = fields


class ProposedShown(serializers.Serializer):  # type: ignore[type-arg]
    """So much against that invoice."""

    invoice = serializers.IntegerField()
    amount = MoneyShown("")


class ProposalShown(serializers.Serializer):  # type: ignore[type-arg]
    """What a booking may pay, how sure that is (0 to 1), and what speaks for and against it. A person decides."""

    farm = serializers.IntegerField()
    confidence = serializers.DecimalField(5, 4)
    shares = ProposedShown(many=True)
    reasons = serializers.ListField(child=serializers.CharField())
    against = serializers.ListField(child=serializers.CharField())


class MatchShown(BankEntryShown):
    """A booking that came in with what it may pay, the most likely first."""

    proposals = ProposalShown(many=True, read_only=True)

    class Meta:
        model = BankEntry
        fields = [*BankEntryShown.Meta.fields, "proposals"]
        read_only_fields = fields


def with_proposals(row: MatchRow) -> BankEntry:
    """The booking with its proposals at hand."""
    row.entry.__dict__["proposals"] = [
        {
            "farm": one.farm,
            "confidence": one.confidence,
            "shares": [{"invoice": key, "amount": amount} for key, amount in one.shares],
            "reasons": one.reasons,
            "against": one.against,
        }
        for one in row.proposals
    ]
    return row.entry


class MatchWord(serializers.Serializer):  # type: ignore[type-arg]
    """Whose money it is, and what of it is set against which invoices; the rest stays on the farm's account."""

    farm = RowField(Farm)
    shares = several(ShareWord, required=False, max_length=500)

    def validate_shares(self, shares: list[Said]) -> list[Said]:
        return each_once(shares)


class AcceptedWord(MatchWord):
    """One proposal, as it was seen."""

    entry = RowField(BankEntry)
