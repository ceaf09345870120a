"""Every way by which a file of somebody's comes in: what reads it, what it may say no with, and real files of it."""

import io
import json
from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date
from zoneinfo import ZoneInfo

from rest_framework.exceptions import APIException
from rest_framework.parsers import JSONParser

from farms.domain.herd_list import read_herd_list
from farms.domain.herd_table import UnreadableHerdList, read_table
from invoicing.documents.logo import LogoUnreadable, bare_logo
from invoicing.domain.bank_csv import guess_mapping, read_bank_csv
from invoicing.domain.bank_file import UnreadableBankFile
from invoicing.domain.camt053 import read_camt053
from tests.fuzz.real_files import bank_tables, batches, calendars, pictures, problems, statements, tables
from trimops.paper.picture_anew import PictureUnreadable, picture_anew
from visits.documents.busy_times import read_busy_times
from visits.documents.calendar_rules import CannotRead
from visits.domain.kit.plan_kit_list import plan_kit_list
from visits.domain.kit.read_kit_list import UnreadableKitList, read_kit_list
from visits.domain.planning.audit import Unreadable, read_document
from visits.domain.planning.problem_faults import ProblemFaults
from visits.domain.planning.read_problem import read_problem
from visits.domain.read_batch import read_batch
from visits.domain.score_lines import lines_of_table

LONDON = ZoneInfo("Europe/London")


@dataclass(frozen=True)
class Inlet:
    read: Callable[[bytes], object]
    says_no: tuple[type[Exception], ...]
    real: Callable[[], tuple[bytes, ...]]


def _bank_csv(content: bytes) -> object:
    """As the page does it: guessed, then said by a person; the two real files have their amounts in other columns."""
    mapping = guess_mapping(content)
    if mapping.delimiter == ",":
        return read_bank_csv(content, replace(mapping, credit=1, debit=2, party=3, text=(4,)), "GBP")
    columns = replace(
        mapping, header_rows=2, footer_rows=1, amount=1, party=2, account=3, text=(4,), reference=5
    )
    return read_bank_csv(content, columns, "EUR")


def _calendar(content: bytes) -> object:
    return read_busy_times(content, date(2026, 1, 1), date(2026, 5, 1), LONDON)


def _problem(content: bytes) -> object:
    return read_problem(content.decode("utf-8", errors="replace"))


def _audited(content: bytes) -> object:
    return read_document(content.decode("utf-8", errors="replace"))


def _batch(content: bytes) -> object:
    try:
        sent = JSONParser().parse(io.BytesIO(content))
    except RecursionError:  # because: so the address says it, "Nested too deeply."
        return None
    found = read_batch(sent)
    json.dumps([fault.reason for fault in found[1]])
    return found


INLETS = {
    "herd list": Inlet(
        lambda content: read_herd_list(read_table(content)), (UnreadableHerdList,), lambda: tables("herd")
    ),
    "scores": Inlet(
        lambda content: lines_of_table(read_table(content)), (UnreadableHerdList,), lambda: tables("herd")
    ),
    "kit list": Inlet(
        lambda content: plan_kit_list(read_kit_list(read_table(content), ("Store",)), []),
        (UnreadableHerdList, UnreadableKitList),
        lambda: tables("kit"),
    ),
    "CAMT.053": Inlet(read_camt053, (UnreadableBankFile,), statements),
    "bank CSV": Inlet(_bank_csv, (UnreadableBankFile,), bank_tables),
    "calendar": Inlet(_calendar, (CannotRead,), calendars),
    "week problem": Inlet(_problem, (ProblemFaults,), problems),
    "audited week": Inlet(_audited, (Unreadable,), problems),
    "photo": Inlet(picture_anew, (PictureUnreadable,), lambda: pictures("JPEG")),
    "logo": Inlet(bare_logo, (LogoUnreadable,), lambda: (*pictures("PNG"), *pictures("JPEG"))),
    "crush batch": Inlet(_batch, (APIException,), batches),
}
