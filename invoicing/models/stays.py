"""Rows of an issued invoice are not deleted: the books would have a gap."""

from typing import TypeVar

from django.db import models

from trimops.kernel.errors import RuleBroken
from trimops.tenancy.models import TenantModel
from trimops.tenancy.querysets import TenantQuerySet

M = TypeVar("M", bound=models.Model, covariant=True)


class IssuedStays(RuleBroken):
    """An issued invoice, or a line of one, was to be deleted."""

    code = "issued_stays"

    def __init__(self) -> None:
        super().__init__("An issued invoice stays in the books: correct it by a credit note.")


class RowsThatStay(TenantQuerySet[M]):
    """Deletes drafts, or what hangs on them; refuses where one row is of an issued invoice."""

    state_path = "invoice__state"

    def delete(self) -> tuple[int, dict[str, int]]:
        if self.filter(**{self.state_path: "issued"}).exists():
            raise IssuedStays
        return super().delete()

    delete.alters_data = True  # type: ignore[attr-defined]
    delete.queryset_only = True  # type: ignore[attr-defined]


class PartOfInvoice(TenantModel):
    """A row that hangs on an invoice and stays with it once that is issued."""

    class Meta:
        abstract = True

    def delete(self, *args: object, **kwargs: object) -> tuple[int, dict[str, int]]:
        """IssuedStays where the invoice is issued."""
        rows = type(self)._default_manager.within(self.scope).filter(pk=self.pk)
        if rows.filter(**{RowsThatStay.state_path: "issued"}).exists():
            raise IssuedStays
        return super().delete(*args, **kwargs)

    delete.alters_data = True  # type: ignore[attr-defined]
