"""The base of every address under /api/v1/: closed, described, and the same in all manners."""

import hashlib
import json
from collections.abc import Callable, Mapping, Sequence
from functools import cached_property
from typing import Any, ClassVar, TypeVar

from django.db import IntegrityError, OperationalError, transaction
from django.views.decorators.debug import sensitive_variables
from rest_framework import serializers
from rest_framework.exceptions import ParseError
from rest_framework.parsers import JSONParser
from rest_framework.request import Request
from rest_framework.response import Response

from trimops.accounts.actions import Action
from trimops.api.asked import read_query
from trimops.api.described import shape_faults
from trimops.api.etags import etag_of, is_known
from trimops.api.op import Op, Said
from trimops.api.refusals import CannotBeMeant, flatten
from trimops.api.schema import ApiSchema
from trimops.api.services.answer_once import Call, Told, answer_once
from trimops.tenancy.models import TenantModel
from trimops.web.lost_races import is_lost_race
from trimops.web.refusals import Malformed, TooLarge
from trimops.web.scoped_api import ScopedApi

T = TypeVar("T")
KEY_HEADER = "Idempotency-Key"
MOST_BYTES = 2_000_000
# How often it is tried when two callers are in each other's way.
TRIES = 3


class Api(ScopedApi):
    """`ops` says for each method what it is. A view fetches within the scope and calls one service."""

    ops: ClassVar[Mapping[str, Op]] = {}
    # What a row itself refuses has the described shape, else it would not have come so far.
    row_fault: ClassVar[tuple[int, str]] = (422, CannotBeMeant.code)
    also_refuses: ClassVar[tuple[int, ...]] = ()
    # What a cache may do with the answer to something that was done.
    cache_when_done: ClassVar[str] = "private, no-cache"
    parser_classes = [JSONParser]
    most_bytes: ClassVar[int] = MOST_BYTES
    schema = ApiSchema()
    secrets: Mapping[str, str] = {}

    def initial(self, request: Request, *args: object, **kwargs: object) -> None:
        super().initial(request, *args, **kwargs)
        self.op = self.ops[self._method()]
        self.asked: dict[str, Any] = read_query(request, self.op)

    def finalize_response(self, request: Request, response: Response, *args: Any, **kwargs: Any) -> Response:
        answer = super().finalize_response(request, response, *args, **kwargs)
        op = self.ops.get(self._method())
        if op is not None and op.deprecated is not None:
            for name, value in op.deprecated.headers().items():
                answer[name] = value
        return answer

    def what_it_does(self) -> Action:
        """What the operation of this method says it does; a method without one is said to be wrong (405)."""
        op = self.ops.get(self._method())
        if op is None:
            self.http_method_not_allowed(self.request)
        assert op is not None
        return op.action

    @property
    def allowed_methods(self) -> list[str]:
        return [method.upper() for method in self.ops]

    def _method(self) -> str:
        method = str(self.request.method).lower()
        return "get" if method == "head" else method

    # What is said and what is shown

    def content(self, *, row: TenantModel | None = None) -> Said:
        """The body, read: Malformed (400) where it is not as described, CannotBeMeant (422) where that is not enough.

        `row` makes it a change of that row, in which what is left out stays.
        """
        sent, takes = self._sent(), self.op.takes
        assert takes is not None
        faults = self._misshapen if row is None else shape_faults(takes, sent, is_part=True)
        if faults:
            raise Malformed(faults)
        reading: Any = takes(row, data=sent, partial=row is not None, context=self.context)
        if not reading.is_valid():
            raise CannotBeMeant(faults=flatten(reading.errors))
        found: Said = reading.validated_data
        return found

    def show(self, shown: Any) -> Any:
        """A row (or whatever `shows` reads) as JSON, with only the fields that were asked for."""
        shows: Any = self.op.shows
        return self._wanted(shows(shown, context=self.context).data)

    def show_all(self, rows: Sequence[Any]) -> list[Any]:
        """Many rows in the same way, read by one serializer: to make one anew for each takes longer than to read."""
        shows: Any = self.op.shows
        return [self._wanted(told) for told in shows(rows, many=True, context=self.context).data]

    def _wanted(self, told: Any) -> Any:
        wanted = self.asked.get("fields")
        return {name: told[name] for name in told if name in wanted} if wanted else told

    @property
    def context(self) -> dict[str, Any]:
        return {"scope": self.scope, "seat": self.seat, "now": self.now, "request": self.request}

    def answer(self, told: Any, *, status: int | None = None, location: str = "") -> Response:
        """The answer with its tag; 304 without a body where the asker has it already."""
        tag = etag_of(told)
        headers = {"ETag": tag, "Cache-Control": "private, no-cache"}
        if self._method() == "get" and is_known(self.request, tag):
            return Response(status=304, headers=headers)
        if location:
            headers["Location"] = location
        return Response(told, status=status or self.op.status, headers=headers)

    def done(self, shown: Any) -> Response:
        """The answer to something that happened: what came of it, or nothing where there is nothing to show."""
        return self.answer(self.show(shown)) if self.op.shows else Response(status=self.op.status)

    # What is done

    @sensitive_variables("body")
    def once(self, act: Callable[[], Response]) -> Response:
        """Do it under the caller's Idempotency-Key, in one transaction with the answer that is kept of it."""
        key = self.request.headers.get(KEY_HEADER, "")
        if not 0 < len(key) <= 128 or not key.isascii() or not key.isprintable() or " " in key:
            raise Malformed(
                [(f"header.{KEY_HEADER}", "Needed: 1 to 128 signs without a space, new for each thing.")]
            )
        if self._misshapen:
            # because: it says what is missing or malformed before it comes to a service, and needs no lock for that
            act()
            raise AssertionError("A body that is not as described was taken.")
        call = Call(self.scope, self.seat.user, key, self._fingerprint())
        told, is_again = self.together(lambda: answer_once(call=call, act=lambda: _kept(act()), at=self.now))
        body = told.body if is_again or not self.secrets else {**told.body, **self.secrets}  # type: ignore[dict-item]
        return Response(body, told.status, headers={**told.headers, "Cache-Control": self.cache_when_done})

    def tell_once(self, **secrets: str) -> None:
        """Goes into the first answer alone: what is kept of a call for repeating it holds no secret."""
        self.secrets = secrets

    def together(self, act: Callable[[], T]) -> T:
        """In one transaction; where somebody was quicker, or two hold each other's locks, the one who lost tries again.

        The next try sees what the other one did, and so is refused by the rule of the work, if at all.
        """
        for left in reversed(range(TRIES)):
            try:
                with transaction.atomic():
                    return act()
            except (OperationalError, IntegrityError) as fault:
                if not left or not is_lost_race(fault):
                    raise
        raise AssertionError

    def _fingerprint(self) -> str:
        body = self._body_mark() if self.op.takes else "null"
        # because: whoever sees another farm by now, or by another token, must not hear what was answered at the first
        where = f"{self.scope.farm_id} {self.request.method} {self.request.get_full_path()}"
        text = f"{where} {body}"
        return hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()

    @cached_property
    def _misshapen(self) -> list[tuple[str, str]]:
        """In what the body is not as described; nothing where none is taken, or where it is a file."""
        takes = self.op.takes
        is_fields = isinstance(takes, type) and issubclass(takes, serializers.BaseSerializer)
        return shape_faults(takes, self._sent()) if is_fields and takes else []

    def _body_mark(self) -> str:
        """By which a body is known again."""
        return json.dumps(self._sent(), sort_keys=True)

    def _sent(self) -> Any:
        if int(self.request.META.get("CONTENT_LENGTH") or 0) > self.most_bytes:
            raise TooLarge(f"At most {self.most_bytes} bytes at once.")
        try:
            return self.request.data
        except RecursionError:
            raise ParseError("Nested too deeply.") from None


def _kept(answer: Response) -> Told:
    headers = {name: answer.headers[name] for name in ("ETag", "Location") if name in answer.headers}
    body = json.loads(answer.rendered_content) if hasattr(answer, "accepted_renderer") else answer.data
    return Told(answer.status_code, headers, body)
