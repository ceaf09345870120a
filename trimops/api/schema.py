"""How the description (OpenAPI 3.1) is made: of the `Op` of each method and the serializers that it names."""

from inspect import cleandoc
from typing import Any

from drf_spectacular.openapi import AutoSchema
from drf_spectacular.utils import OpenApiParameter, OpenApiResponse
from rest_framework import serializers

from trimops.api.asked import query_fields, shown_names
from trimops.api.op import JSON, Op
from trimops.api.rows import MOST_ID, RowField
from trimops.api.told_besides import meaning, meaning_in
from trimops.web.problems import PROBLEM

ID = {"type": "integer", "minimum": 1, "maximum": MOST_ID}
ETAG = {"type": "string", "pattern": r'^(\*|"[\x21\x23-\x7e]{1,80}")$'}
KEY = {"type": "string", "pattern": r"^[\x21-\x7e]{1,128}$"}
PROBLEM_SCHEMA = {"$ref": "#/components/schemas/Problem"}
WORDS = {
    400: "It does not have the described shape.",
    401: "Nobody is signed in, or the token is not good.",
    403: "Not open to your part in the business, or to this token.",
    404: "Not there, or another's.",
    406: "Not available in the form asked for.",
    409: "A rule of the work says no.",
    412: "Changed since it was read.",
    413: "Too much at once.",
    415: "Another kind of content is wanted.",
    422: "Well-formed, but it cannot be meant.",
    428: "If-Match is missing.",
    429: "Too often; Retry-After says when again.",
}


class ApiSchema(AutoSchema):
    """Reads `view.ops`. Everything that a call may be answered is listed; nothing else may be answered."""

    @property
    def op(self) -> Op:
        view: Any = self.view
        found: Op = view.ops[self.method.lower()]
        return found

    def is_excluded(self) -> bool:
        return not hasattr(self.view, "ops")

    def get_operation_id(self) -> str:
        return self.op.name

    def get_summary(self) -> str:
        return self.op.says

    def get_description(self) -> str:  # type: ignore[override]  # because: the library drops both arguments too
        action = self.op.action
        return f"{cleandoc(self.view.__doc__ or '')}\n\nScope: `{action.value}`.".strip()

    def get_tags(self) -> list[str]:
        return [self.op.action.value.partition(":")[0]]

    def is_deprecated(self) -> bool:
        return self.op.deprecated is not None

    def get_auth(self) -> list[dict[str, list[str]]]:
        return [{"token": []}]

    def get_request_serializer(self) -> Any:
        return self.op.takes

    def get_response_serializers(self) -> Any:
        found: dict[Any, Any] = {str(self.op.status): self._success()}
        for status in getattr(self.view, "also_answers", ()):
            found[str(status)] = self._success()
        if self._is_conditional():
            found["304"] = OpenApiResponse(None, "The version that you have is the newest.")
        for status in sorted(self._refusals()):
            found[str(status), PROBLEM] = OpenApiResponse(PROBLEM_SCHEMA, WORDS[status])
        return found

    def _success(self) -> Any:
        if self.op.media != JSON:
            return OpenApiResponse({"type": "string", "format": "binary"}, "The file.")
        if self.op.lists and self.op.shows is not None:
            item = self.resolve_serializer(self.op.shows, "response")
            return OpenApiResponse(_page_of(self._or_part(item)), "A page of them.")
        if self.op.shows is not None and shown_names(self.op):
            return OpenApiResponse(
                self._or_part(self.resolve_serializer(self.op.shows, "response")), "As it is."
            )
        return OpenApiResponse(self.op.shows, "Done." if self.op.repeats else "As it is.")

    def _or_part(self, item: Any) -> dict[str, Any]:
        """All of it, or what `fields` asked for (its component is added at the end: finishing.py)."""
        if not shown_names(self.op):
            ref: dict[str, Any] = item.ref
            return ref
        return {"anyOf": [item.ref, {"$ref": f"#/components/schemas/{item.name}Part"}]}

    def _is_conditional(self) -> bool:
        return self.method == "GET" and self.op.media == JSON

    def _refusals(self) -> set[int]:
        found = {400, 401, 403, 406, 429}
        if "{" in self.path:
            found |= {404}
        if self.op.lists or self.op.query:
            found |= {422}
        if self.method != "GET":
            found |= {404, 409, 422}
        if self.op.takes is not None:
            found |= {413, 415}
        if self.op.changes:
            found |= {412, 428}
        return found | set(getattr(self.view, "also_refuses", ()))

    def get_override_parameters(self) -> list[Any]:
        found = [
            OpenApiParameter(
                name,
                self._word(field),
                required=getattr(field, "is_needed", False),
                description=field.help_text or meaning_in("query", name),
            )
            for name, field in query_fields(self.op).items()
        ]
        if self.op.changes:
            found.append(_header("If-Match", ETAG, "The ETag that you read, or *.", is_needed=True))
        if self.op.repeats:
            found.append(_header("Idempotency-Key", KEY, "One for each thing to be done.", is_needed=True))
        if self._is_conditional():
            # because: one that is no tag is no tag that we know, and HTTP wants no refusal for it
            found.append(_header("If-None-Match", {"type": "string"}, "The ETag that you have."))
            told = [self.op.status, 304]
            found.append(OpenApiParameter("ETag", str, OpenApiParameter.HEADER, response=told))
        return found

    def _word(self, field: Any) -> dict[str, Any]:
        """A word of the query with its limits, which the library adds only to fields of a body."""
        schema: dict[str, Any] = {**self._map_serializer_field(field, "request")}
        self._insert_field_validators(field, schema)  # type: ignore[no-untyped-call]
        return {name: value for name, value in schema.items() if name != "description"}

    def _resolve_path_parameters(self, variables: list[str]) -> list[Any]:
        found: list[Any] = super()._resolve_path_parameters(variables)  # type: ignore[no-untyped-call]
        for each in found:
            if each["schema"].get("type") == "integer":
                each["schema"] = dict(ID)
            each["description"] = meaning_in("path", each["name"])
        return found

    def map_renderers(self, attribute: str) -> list[str]:
        return [self.op.media] if attribute == "media_type" else []

    def _map_serializer(self, serializer: Any, direction: Any, bypass_extensions: bool = False) -> Any:
        schema = super()._map_serializer(serializer, direction, bypass_extensions)  # type: ignore[no-untyped-call]
        if isinstance(schema, dict) and schema.get("type") == "object" and "properties" in schema:
            schema.setdefault("additionalProperties", False)
            for name, field in schema["properties"].items():
                known = field.get("description", "")
                # because: of a choice the library tells the words alone
                if (not known or known.startswith("* `")) and (says := meaning(type(serializer), name)):
                    field["description"] = f"{says}\n\n{known}".strip()
            is_row = isinstance(serializer, serializers.ModelSerializer)
            if direction == "response" and schema["properties"] and is_row:
                # because: the library asks what must be said; what is shown is shown whole
                schema["required"] = sorted(schema["properties"])
        return schema

    def _map_serializer_field(self, field: Any, direction: Any, bypass_extensions: bool = False) -> Any:
        if isinstance(field, RowField):
            kind: Any = ["integer", "null"] if field.allow_null else "integer"
            return {**ID, "type": kind, **({"description": str(field.help_text)} if field.help_text else {})}
        schema = super()._map_serializer_field(field, direction, bypass_extensions)  # type: ignore[no-untyped-call]
        if isinstance(field, serializers.DecimalField) and "pattern" in schema:
            schema = {**schema, "pattern": _decimal_pattern(field)}
        if isinstance(field, serializers.ListSerializer):
            limits = {"minItems": vars(field).get("min_length"), "maxItems": vars(field).get("max_length")}
            schema = {**schema, **{name: limit for name, limit in limits.items() if limit is not None}}
        return schema


def _decimal_pattern(field: serializers.DecimalField) -> str:
    """Exactly what is taken: the library's own pattern lets an empty text and a lone point pass."""
    whole, places = field.max_whole_digits or 1, field.decimal_places or 0
    part = rf"(\.[0-9]{{1,{places}}})?" if places else ""
    sign = "" if field.min_value is not None and field.min_value >= 0 else "-?"
    return rf"^{sign}(0|[1-9][0-9]{{0,{max(whole, 1) - 1}}}){part}$"


def _header(name: str, schema: dict[str, Any], says: str, *, is_needed: bool = False) -> OpenApiParameter:
    return OpenApiParameter(name, schema, OpenApiParameter.HEADER, required=is_needed, description=says)


def _page_of(item: dict[str, Any]) -> dict[str, Any]:
    link = {"type": ["string", "null"], "format": "uri"}
    return {
        "type": "object",
        "properties": {"items": {"type": "array", "items": item}, "next": link, "previous": link},
        "required": ["items", "next", "previous"],
        "additionalProperties": False,
    }
