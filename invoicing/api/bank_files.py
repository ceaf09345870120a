"""Files of the bank: kept and read; how a bank writes its CSV."""

from django.urls import reverse
from rest_framework.response import Response

from invoicing.api.bank_shown import (
    BankFileShown,
    BankMappingShown,
    ColumnsTold,
    FileWord,
    ReadingTold,
    ReadWord,
    mapping_from,
)
from invoicing.domain.bank_csv import csv_rows, guess_mapping
from invoicing.domain.bank_file import MOST_BYTES as LARGEST_FILE
from invoicing.domain.bank_file import UnreadableBankFile
from invoicing.domain.camt053 import looks_like_xml
from invoicing.models import BankFile, BankMapping
from invoicing.services.keep_bank_file import BankFileRefused, keep_bank_file
from invoicing.services.read_bank_file import Reading, read_bank_file
from invoicing.services.save_bank_mapping import refuse_unclear, save_bank_mapping
from trimops.accounts.actions import Action
from trimops.api.asked import Words, YesOrNo
from trimops.api.kinds import DoApi, RowApi, RowsApi, StepApi, ToldApi
from trimops.api.op import Filter, Op, Said
from trimops.api.raw_body import FILE, RawBodyApi
from trimops.api.view import Api
from trimops.tenancy.querysets import TenantQuerySet

PREVIEWED = 20
NOT_READ = Reading(0, 0, ())


def reading_told(file: BankFile, reading: Reading, *, is_read: bool = True) -> dict[str, object]:
    """What came of a file."""
    told = {"new": reading.new, "known": reading.known, "warnings": list(reading.warnings)}
    return {"file": file.pk, "is_read": is_read, **told}


def take_in(api: Api, file_name: str, content: bytes) -> dict[str, object]:
    """Kept, and read at once where it is a CAMT.053."""
    file = keep_bank_file(
        business=api.seat.business, file_name=file_name, content=content, at=api.now, by=api.seat.user
    )
    if not looks_like_xml(content):
        return reading_told(file, NOT_READ, is_read=False)
    return reading_told(file, read_bank_file(file=file, at=api.now, by=api.seat.user))


class BankFilesApi(RowsApi[BankFile]):
    """Files of the bank. A CAMT.053 is read at once; of a CSV the columns are told next, by reading it.

    The same file again, or one whose bookings came before, brings nothing twice. Refused: `bank_file_refused`; nothing
    of such a file is kept.
    """

    model = BankFile
    ops = {
        "get": Op(
            Action.SEE_MONEY,
            "list_bank_files",
            "Files of the bank, the newest first",
            shows=BankFileShown,
            lists=True,
            filters={
                "is_waiting": Filter(YesOrNo(help_text="Its columns are not told yet."), "read_at__isnull")
            },
            orders={"newest": ("-kept_at", "-id"), "id": ("id",)},
        ),
        "post": Op(
            Action.KEEP_BANK,
            "add_bank_file",
            "Hand in a file of the bank",
            takes=FileWord,
            shows=ReadingTold,
            status=201,
            repeats=True,
        ),
    }

    def rows(self) -> TenantQuerySet[BankFile]:
        rows: TenantQuerySet[BankFile] = BankFile.objects.within(self.scope).defer("content")
        return rows

    def _add(self) -> Response:
        content = self.content()
        found = take_in(self, content["file_name"], content["content"])
        return self.answer(self.show(found), location=f"{self.request.path}{found['file']}/")


class WholeBankFileApi(RawBodyApi, DoApi):
    """The same for a file of up to 5 MB, sent as it is. A `file_name` with an ending is held against what the file is.

    Refused: `bank_file_refused`; nothing of such a file is kept.
    """

    most_bytes = LARGEST_FILE
    also_refuses = (413, 415)
    ops = {
        "post": Op(
            Action.KEEP_BANK,
            "send_bank_file",
            "Send a file of the bank as it is",
            takes=FILE,
            shows=ReadingTold,
            status=201,
            repeats=True,
            query={
                "file_name": Words(max_length=200, help_text="Its name; `statement`, if nothing is said.")
            },
        )
    }

    def _act(self) -> Response:
        found = take_in(self, self.asked.get("file_name", "statement"), self.sent_file)
        return self.answer(self.show(found), location=f"{reverse('api_bank_files')}{found['file']}/")


class BankFileApi(RowApi[BankFile]):
    """One file of the bank: how many bookings it brought, whether its columns are still to be told."""

    model = BankFile
    ops = {"get": Op(Action.SEE_MONEY, "read_bank_file", "One file of the bank", shows=BankFileShown)}


class BankColumnsApi(ToldApi):
    """A first guess at how a CSV is written, and its first rows. Refused: `bank_file_refused`."""

    also_refuses = (409,)
    ops = {"get": Op(Action.SEE_MONEY, "read_bank_columns", "The columns of a CSV", shows=ColumnsTold)}

    def told(self) -> object:
        content = bytes(self.fetch(BankFile, self.kwargs["pk"]).content)
        guess = guess_mapping(content)
        try:
            rows = csv_rows(content, guess.encoding, guess.delimiter)
        except UnreadableBankFile as fault:
            raise BankFileRefused(str(fault)) from fault
        return {"mapping": guess, "rows": [row for _, row in rows[:PREVIEWED]]}


class BankReadApi(StepApi[BankFile]):
    """A CSV that was handed in is read by the columns told.

    Refused: `bank_file_refused`, `mapping_unclear`.
    """

    model = BankFile
    related = ("business",)
    ops = {
        "post": Op(
            Action.KEEP_BANK,
            "read_bank_csv",
            "Read a CSV of the bank",
            takes=ReadWord,
            shows=ReadingTold,
            repeats=True,
        )
    }

    def act(self, row: BankFile, content: Said) -> object:
        mapping = mapping_from(content["mapping"])
        refuse_unclear(mapping)
        reading = read_bank_file(file=row, at=self.now, by=self.seat.user, mapping=mapping)
        if name := content.get("keep_as"):
            save_bank_mapping(business=self.seat.business, name=name, mapping=mapping)
        return reading_told(row, reading)


class BankMappingsApi(RowsApi[BankMapping]):
    """How banks write their CSV, as it was kept by reading a file."""

    model = BankMapping
    ops = {
        "get": Op(
            Action.SEE_MONEY, "list_bank_mappings", "Kept columns of CSVs", shows=BankMappingShown, lists=True
        )
    }
