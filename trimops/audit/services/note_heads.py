"""The ends of the chains are noted outside the database, where whoever changes it does not reach by SQL.

One line of JSON each in `audit-heads.jsonl` of the data folder, at most one a business and day: the daily backup takes
the file along, and a copy of it anywhere is enough to tell a chain that was cut or made anew. It names no person.
"""

import json
from collections.abc import Mapping
from datetime import datetime

from trimops.audit.heads_file import heads_file, kept_heads
from trimops.audit.selectors.audit_heads import Head


def note_heads(*, heads: Mapping[int, Head], at: datetime) -> None:
    """Add those of businesses that have no line of that day (UTC) yet. `at` is aware."""
    file = heads_file()
    day = at.date().isoformat()
    there = {(kept.business, kept.at[:10]) for kept in kept_heads(file)} if heads else set()
    lines = [
        json.dumps({"at": at.isoformat(), "business": pk, "position": head.position, "chain": head.chain})
        for pk, head in sorted(heads.items())
        if (pk, day) not in there
    ]
    if lines:
        with file.open("a", encoding="utf-8") as out:
            out.write("".join(f"{line}\n" for line in lines))
