"""What is undone, written off, left out or changed by hand says why."""

from trimops.kernel.errors import RuleBroken


class ReasonMissing(RuleBroken):
    """No reason was given."""

    code = "reason_missing"


def want_reason(*, words: str, ask: str) -> str:
    """The reason without space around it. ReasonMissing, asking in the sentence `ask`, where there is none."""
    reason = words.strip()
    if not reason:
        raise ReasonMissing(ask)
    return reason
