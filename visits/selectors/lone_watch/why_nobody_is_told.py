"""Whether the watch could tell anybody, as things stand."""

from datetime import datetime

from trimops.kernel.scope import Scope
from visits.selectors.lone_watch.watch_contacts import vans_without_contact
from visits.selectors.lone_watch.ways_out import is_timetable_kept, ways_out


def why_nobody_is_told(scope: Scope, at: datetime) -> str:
    """What keeps the watch from telling anybody, and how to mend it; "" where nothing does."""
    if not ways_out():
        return (
            "Nothing can leave this server: it has no mail server, and SMS go by one too. "
            "Until whoever runs it has set TRIMOPS_EMAIL_HOST, the watch could tell nobody."
        )
    if not is_timetable_kept(at):
        return (
            "Nobody keeps the time on this server, so nothing would be noticed. "
            "Whoever runs it must start the timetable (make up, or manage.py run_schedule)."
        )
    if lonely := vans_without_contact(scope):
        return f"There is nobody to tell for {', '.join(lonely)}: put somebody on the list first."
    return ""
