"""How the messages of a watch are named in the outbox, so that each is written once."""


def call_start(watch_id: int, number: int | None = None) -> str:
    """How the names of all calls of a watch begin, or those of one call (one for each channel)."""
    return f"watch:{watch_id}:call:" if number is None else f"watch:{watch_id}:call:{number}:"


def call_name(watch_id: int, number: int, channel: str) -> str:
    """A question or an alarm."""
    return f"{call_start(watch_id, number)}{channel}"


def well_name(watch_id: int, number: int, channel: str) -> str:
    """The word that all is well to whoever was told by that call."""
    return f"watch:{watch_id}:well:{number}:{channel}"
