"""The wash-down log of a visit, as it shows."""

from collections.abc import Sequence

from visits.domain.writing_content import WashContent
from visits.models import Visit, WashDown
from visits.services.shown_writing import ShownWriting


def show_wash_downs(*, visit: Visit, shown: Sequence[ShownWriting]) -> None:
    """One row for each wash-down that shows, none for one taken back."""
    gone = [writing.row.record for writing in shown if writing.row.is_gone]
    WashDown.objects.within(visit.scope).filter(record__in=gone).delete()
    records = [writing.row.record for writing in shown]
    known = {row.record: row for row in WashDown.objects.within(visit.scope).filter(record__in=records)}
    for writing in shown:
        content = writing.content()
        if writing.row.is_gone or not isinstance(content, WashContent):
            continue
        row = known.get(writing.row.record) or WashDown(
            business_id=visit.business_id, visit=visit, record=writing.row.record
        )
        row.substance, row.dilution = content.substance, content.dilution
        row.contact_minutes, row.by_id = content.contact_minutes, writing.row.by_id
        # The phone's clock was off by as much for the washing as for the writing of it.
        off_by = writing.row.placed_at - writing.row.made_at
        row.washed_at = min(content.washed_at + off_by, writing.row.received_at)
        row.full_clean()
        row.save()
