"""A body is held against its own description before anything else reads it: what is published is what is asked."""

from functools import cache
from threading import Lock
from typing import Any

from drf_spectacular.drainage import GENERATOR_STATS
from drf_spectacular.plumbing import ComponentRegistry
from jsonschema import Draft202012Validator, FormatChecker
from rest_framework import serializers
from rest_framework.views import APIView

from trimops.api.schema import ApiSchema

MOST_FAULTS = 20
# because: the library finds its own parts when they are first needed, and two threads that do so at once trip over it
DESCRIBING = Lock()
FORMATS = FormatChecker(formats=["date", "date-time", "uuid", "email"])


class _NoView(APIView):
    """The library asks a view for what a serializer is told besides; ours are told nothing while they are described."""

    request: Any = None


@cache
def validator_of(content: type[serializers.Serializer], is_part: bool) -> Draft202012Validator:  # type: ignore[type-arg]
    """The checker of a body; `is_part`: a change, in which each field may be left out."""
    with DESCRIBING:
        return _validator(content, is_part)


def _validator(content: type[serializers.Serializer], is_part: bool) -> Draft202012Validator:  # type: ignore[type-arg]
    schema, registry = ApiSchema(), ComponentRegistry()
    schema.registry, schema.method = registry, "PATCH" if is_part else "POST"
    schema.path, schema.view = "", _NoView()
    with GENERATOR_STATS.silence():
        root = schema.resolve_serializer(content(partial=is_part), "request")
    components = registry.build({})
    return Draft202012Validator({**root.ref, "components": components}, format_checker=FORMATS)


def shape_faults(
    content: type[serializers.Serializer],  # type: ignore[type-arg]
    sent: object,
    *,
    is_part: bool = False,
) -> list[tuple[str, str]]:
    """(path, reason) of all in which `sent` is not as described, at most 20."""
    found = validator_of(content, is_part).iter_errors(sent)
    return [
        (_path(fault.absolute_path), fault.message[:200])
        for fault, _ in zip(found, range(MOST_FAULTS), strict=False)
    ]


def _path(parts: Any) -> str:
    text = ""
    for part in parts:
        text += f"[{part}]" if isinstance(part, int) else f".{part}" if text else str(part)
    return text
