"""What is read by a reader of its own is only described here, in the words of that reader."""

from drf_spectacular.drainage import set_override
from rest_framework import serializers

from trimops.api.op import Said

# As `visits.domain.json_fields` reads moments: with their offset, from 1970 to 2999.
MOMENT = {
    "type": "string",
    "format": "date-time",
    "pattern": r"^(19[7-9][0-9]|2[0-9]{3})-",
}
UID = {"type": "string", "format": "uuid"}


class Described(serializers.Field):  # type: ignore[type-arg]
    """A field that takes whatever comes; `schema` says what its reader will make of it."""

    def __init__(self, schema: Said, *, is_needed: bool = False) -> None:
        super().__init__(required=is_needed)
        self.is_needed = is_needed
        set_override(self, "field", schema)

    def run_validation(self, data: object = serializers.empty) -> object:
        return data


def or_null(schema: Said) -> Said:
    """The same, or nothing said."""
    return {"anyOf": [schema, {"type": "null"}]}
