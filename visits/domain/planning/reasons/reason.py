"""One reason: a code, the figures it stands on, and nothing else. `say_reason` puts it into a sentence."""

from collections.abc import Mapping
from dataclasses import dataclass

Figure = str | int | float | None
"""Ids, instants (ISO 8601), days, minutes, kilometres, money of the minor unit."""


@dataclass(frozen=True, slots=True)
class Reason:
    """`code` is a key of the sayings; every figure can be worked out again from the problem and the plan."""

    code: str
    figures: Mapping[str, Figure]

    def document(self) -> dict[str, object]:
        """Plain values for JSON."""
        return {"code": self.code, **self.figures}

    @classmethod
    def of_document(cls, value: Mapping[str, object]) -> "Reason":
        """The reason back from its document."""
        figures = {key: _figure(each) for key, each in value.items() if key != "code"}
        return cls(str(value["code"]), figures)


def _figure(value: object) -> Figure:
    return value if isinstance(value, str | int | float) else None
