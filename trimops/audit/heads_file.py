"""The file in which the ends of the chains are noted, read."""

import json
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from django.conf import settings


@dataclass(frozen=True)
class KeptHead:
    """At `at` (ISO 8601) the chain of the business ended at `position` with `chain`."""

    at: str
    business: int
    position: int
    chain: str

    @property
    def moment(self) -> datetime:
        return datetime.fromisoformat(self.at).astimezone(UTC)


def heads_file() -> Path:
    """Where it lies on this machine."""
    return Path(settings.DATA_DIR) / "audit-heads.jsonl"


def kept_heads(file: Path) -> Iterator[KeptHead]:
    """Its lines; none where there is no such file. ValueError for a line that is none of ours."""
    if not file.exists():
        return
    for number, line in enumerate(file.read_text(encoding="utf-8").splitlines(), 1):
        try:
            told = json.loads(line)
            # because: an hour that is none is a fault of this line, not of the trail
            datetime.fromisoformat(str(told["at"]))
            yield KeptHead(str(told["at"]), int(told["business"]), int(told["position"]), str(told["chain"]))
        except (ValueError, KeyError, TypeError) as fault:
            raise ValueError(f"{file.name}, line {number}: not the end of a chain ({fault}).") from fault
