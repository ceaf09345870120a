"""What a visit's change means for calendars: its sequence (RFC 5546, section 2.1.4), and the hour they last showed."""

from visits.models import Visit


def count_for_calendars(*, visit: Visit) -> bool:
    """One higher if time or state differ from what is stored, else as it is; whether they differ. Saves nothing.

    Call with the visit locked, before it is saved. Its hour is remembered, so that calendars can show it called off
    when it loses it.
    """
    stored = Visit.objects.within(visit.scope).get(pk=visit.pk)
    hour = visit if visit.planned_start is not None else stored
    if hour.planned_start is not None:
        visit.last_start, visit.last_finish = hour.planned_start, hour.planned_finish
        visit.last_van_id = hour.van_id
    is_other = _shown(stored) != _shown(visit)
    visit.calendar_sequence += is_other
    return is_other


def _shown(visit: Visit) -> tuple[object, ...]:
    return visit.state, visit.planned_start, visit.planned_finish
