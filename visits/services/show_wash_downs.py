"""The wash-down log of a visit, as it shows, and what was mixed for it."""

from collections.abc import Sequence

from visits.domain.writing_content import WashContent
from visits.models import Visit, WashDown
from visits.services.kit.use_wash_kit import use_wash_kit
from visits.services.shown_writing import ShownWriting


def show_wash_downs(*, visit: Visit, shown: Sequence[ShownWriting]) -> None:
    """One row for each wash-down that shows, none for one taken back; the concentrate it took is booked with it."""
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
        row.consumable_id, row.litres = content.consumable, content.litres
        # The phone's clock was off by as much for the washing as for the writing of it.
        off_by = writing.row.placed_at - writing.row.made_at
        row.washed_at = min(content.washed_at + off_by, writing.row.received_at)
        row.full_clean()
        row.save()
    use_wash_kit(visit=visit, noted_at=max(writing.noted_at for writing in shown))
