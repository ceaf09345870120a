"""A calving of a cow is noted, or one that is on file is put right."""

from datetime import date

from django.db import transaction

from farms.domain.calvings import KnownCalving, calving_meant
from farms.models import Calving, Cow


@transaction.atomic
def note_calving(*, cow: Cow, calved_on: date, lactation: int | None = None) -> Calving:
    """Keep it among her calvings; telling it again changes nothing, and an empty number takes none away."""
    rows = {row.pk: row for row in Calving.objects.within(cow.scope).filter(cow=cow)}
    known = [KnownCalving(row.pk, row.calved_on, row.lactation) for row in rows.values()]
    meant = calving_meant(calved_on, lactation, known)
    row = rows[meant.id] if meant else Calving(business_id=cow.business_id, cow=cow)
    told = (calved_on, lactation or row.lactation)
    if row.pk is None or (row.calved_on, row.lactation) != told:
        row.calved_on, row.lactation = told
        row.full_clean()
        row.save()
    return row
