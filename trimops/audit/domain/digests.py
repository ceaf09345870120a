"""The hashes of the trail: of what an entry holds, of the entry, of the chain.

    content = SHA-256(canonical({after, before, salt, seen_from, session}))
    digest  = SHA-256(canonical({at, beside, business, by, content, kind, request, row_id, under, via, what}))
    chain   = SHA-256(previous chain || digest), as lower-case hex texts; the first follows on `first_link`

Two steps, so that what an entry holds can be blotted (a farm is erased) and all else of it still proven: who, when,
to which row. The salt keeps what was blotted from being guessed back from its hash.
"""

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime

from trimops.audit.domain.canonical import canonical


# because: two are made for every row that is written, and a frozen one takes three times as long
@dataclass
class Content:
    """What may be blotted: `before` and `after` are canonical JSON or empty."""

    before: str
    after: str
    salt: str
    seen_from: str
    session: str


@dataclass
class Facts:
    """What stays for good. `at` is aware; `content` the hash of the `Content`."""

    business: int
    at: datetime
    by: int | None
    via: str
    request: str
    kind: str
    what: str
    row_id: int
    under: str
    beside: str
    content: str


def content_digest(content: Content) -> str:
    """64 hexadecimal digits."""
    return _sha256(canonical(vars(content)))


def entry_digest(facts: Facts) -> str:
    """64 hexadecimal digits."""
    return _sha256(canonical(vars(facts)))


def first_link(business_id: int) -> str:
    """What the first seal of a business follows on, so that no chain passes for another's."""
    return _sha256(f"trimops audit trail of business {business_id}")


def next_link(previous: str, digest: str) -> str:
    """The chain, one entry longer."""
    return _sha256(previous + digest)


def changed_alone(before: Mapping[str, object], after: Mapping[str, object]) -> tuple[dict[str, object], ...]:
    """(before, after) with only what differs; what is not known of before counts as different."""
    names = [name for name in after if name not in before or before[name] != after[name]]
    return {name: before[name] for name in names if name in before}, {name: after[name] for name in names}


def _sha256(text: str) -> str:
    return hashlib.sha256(text.encode()).hexdigest()
