"""Which column of a bank's CSV holds what is kept under a name, for the next file."""

from dataclasses import asdict

from django.db import transaction

from invoicing.domain.bank_csv import CsvMapping
from invoicing.models import BankMapping
from trimops.accounts.models import Business
from trimops.kernel.errors import RuleBroken
from trimops.kernel.scope import Scope


class MappingUnclear(RuleBroken):
    """The mapping leaves open where the amount is."""

    code = "mapping_unclear"


@transaction.atomic
def save_bank_mapping(*, business: Business, name: str, mapping: CsvMapping) -> BankMapping:
    """Keep it; one of that name is replaced. MappingUnclear without an amount, or two columns, for it."""
    refuse_unclear(mapping)
    rows = BankMapping.objects.within(Scope(business.pk))
    row = rows.filter(name=name).first() or BankMapping(business=business, name=name)
    row.columns = asdict(mapping)
    row.full_clean()
    row.save()
    return row


def refuse_unclear(mapping: CsvMapping) -> None:
    """MappingUnclear unless one column, or one for in and one for out, holds the amount."""
    has_two = mapping.credit is not None and mapping.debit is not None
    if (mapping.amount is None) == has_two:
        return
    raise MappingUnclear("Choose one column for the amount, or one for money in and one for money out.")


def mapping_of(row: BankMapping) -> CsvMapping:
    """The kept mapping as a value."""
    return CsvMapping(**{**row.columns, "text": tuple(row.columns.get("text", ()))})
