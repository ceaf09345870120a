"""One line more in the log of a watch."""

from datetime import datetime

from visits.models import LoneWatch, WatchEvent

MOST_WORDS = 300


def note_watch(*, watch: LoneWatch, words: str, at: datetime) -> WatchEvent:
    """Keep what happened at the aware instant `at` (cut to 300 letters); the row itself says when it was noted."""
    event = WatchEvent(business_id=watch.business_id, watch=watch, at=at, words=words[:MOST_WORDS])
    event.save(force_insert=True)
    return event
