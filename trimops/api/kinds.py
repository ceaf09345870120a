"""The kinds of address: many rows, one row, a step of one row, something reckoned, a file."""

from typing import Any, ClassVar, Generic, TypeVar

from django.db.models import Model
from django.http import HttpResponse
from rest_framework.request import Request
from rest_framework.response import Response

from trimops.api.cursors import SignedCursors
from trimops.api.etags import etag_of, require_match
from trimops.api.op import Said
from trimops.api.view import Api
from trimops.tenancy.models import TenantModel
from trimops.tenancy.querysets import TenantQuerySet

M = TypeVar("M", bound=TenantModel)


class RowsApi(Api, Generic[M]):
    """GET: a page of rows. POST, where `ops` has it: one more, by `make`."""

    model: ClassVar[type[Any]]
    related: ClassVar[tuple[str, ...]] = ()

    def rows(self) -> "TenantQuerySet[M]":
        """The rows of the list, within the scope; a view narrows them further by what its address names."""
        found: TenantQuerySet[M] = self.model._default_manager.all().within(self.scope)
        return found.select_related(*self.related) if self.related else found

    def items(self, page: list[M]) -> list[Any]:
        """The rows of a page as they are shown; a view that needs more of all of them reads it here, at once."""
        return self.show_all(page)

    def make(self, content: Said) -> M:
        """Call the service that makes it."""
        raise NotImplementedError

    def address_of(self, row: M) -> str:
        """Where the new row is read."""
        return f"{self.request.path.split('?')[0]}{row.pk}/"

    def get(self, request: Request, **kwargs: object) -> Response:
        op = self.op
        wanted = {op.filters[name].lookup: value for name, value in self.asked.items() if name in op.filters}
        pages = SignedCursors(self._order(), op.name)
        page = pages.paginate_queryset(self.rows().filter(**wanted), request, view=self)
        items = self.items(page or [])
        return self.answer(
            {"items": items, "next": pages.get_next_link(), "previous": pages.get_previous_link()}
        )

    def post(self, request: Request, **kwargs: object) -> Response:
        return self.once(self._add)

    def _add(self) -> Response:
        # because: an address that names what is not there says so before what was sent is judged
        self.rows()
        row = self.make(self.content())
        return self.answer(self.show(row), location=self.address_of(row))

    def _order(self) -> tuple[str, ...]:
        orders = self.op.orders or {"id": ("id",)}
        word = self.asked.get("order", next(iter(orders)))
        fields = orders[word.removeprefix("-")]
        whole = fields if "id" in fields else (*fields, "id")
        return tuple(_turned(field) for field in whole) if word.startswith("-") else whole


class RowApi(Api, Generic[M]):
    """GET: one row. PATCH and DELETE, where `ops` has them: under If-Match, on the locked row."""

    model: ClassVar[type[Any]]
    related: ClassVar[tuple[str, ...]] = ()

    def row(self, *, is_locked: bool = False) -> M:
        """The row that the address names, within the scope, else NotFound."""
        found: M = self.fetch(self.model, self.kwargs["pk"], *self.related)
        return found.locked() if is_locked else found

    def change(self, row: M, content: Said) -> M:
        """Call the service that changes it; `content` holds only what was said."""
        raise NotImplementedError

    def remove(self, row: M) -> None:
        """Call the service that takes it away."""
        raise NotImplementedError

    def get(self, request: Request, **kwargs: object) -> Response:
        return self.answer(self.show(self.row()))

    def patch(self, request: Request, **kwargs: object) -> Response:
        return self.together(self._change)

    def delete(self, request: Request, **kwargs: object) -> Response:
        return self.together(self._remove)

    def _change(self) -> Response:
        row = self.row(is_locked=True)
        require_match(self.request, etag_of(self._read_as_shown(row)))
        changed = self.change(row, self.content(row=row))
        return self.answer(self.show(changed))

    def _remove(self) -> Response:
        row = self.row(is_locked=True)
        require_match(self.request, etag_of(self._read_as_shown(row)))
        self.remove(row)
        return Response(status=204)

    def _read_as_shown(self, row: M) -> Any:
        """As the asker read it: the tag is that of the whole row."""
        shows: Any = self.ops["get"].shows
        return shows(row, context=self.context).data


class StepApi(Api, Generic[M]):
    """POST: something happens to one row, or to nothing yet; once for each Idempotency-Key."""

    model: ClassVar[type[Any]]
    related: ClassVar[tuple[str, ...]] = ()

    def row(self) -> M:
        found: M = self.fetch(self.model, self.kwargs["pk"], *self.related)
        return found

    def act(self, row: M, content: Said) -> Any:
        """Call the service; what is returned is shown."""
        raise NotImplementedError

    def post(self, request: Request, **kwargs: object) -> Response:
        return self.once(self._act)

    def _act(self) -> Response:
        row = self.row()
        return self.done(self.act(row, self.content() if self.op.takes else {}))


class DoApi(Api):
    """POST: something happens that names no row; once for each Idempotency-Key."""

    def act(self, content: Said) -> Any:
        """Call the service; what is returned is shown."""
        raise NotImplementedError

    def post(self, request: Request, **kwargs: object) -> Response:
        return self.once(self._act)

    def _act(self) -> Response:
        return self.done(self.act(self.content() if self.op.takes else {}))


class ToldApi(Api):
    """GET: something that is reckoned, which is no row."""

    def told(self) -> Any:
        """What `shows` reads."""
        raise NotImplementedError

    def get(self, request: Request, **kwargs: object) -> Response:
        return self.answer(self.show(self.told()))


class FileApi(Api):
    """GET: a file."""

    def perform_content_negotiation(self, request: Request, force: bool = False) -> tuple[Any, str]:
        # because: there is one form of it, and who wants a PDF may say so; a refusal is JSON all the same
        return super().perform_content_negotiation(request, force=True)

    def file(self) -> HttpResponse:
        """The bytes with their kind and name."""
        raise NotImplementedError

    def get(self, request: Request, **kwargs: object) -> HttpResponse:
        return self.file()


def set_fields(row: Model, content: Said) -> None:
    """What was said goes onto the row; a service checks and keeps it."""
    for name, value in content.items():
        setattr(row, name, value)


def _turned(field: str) -> str:
    return field.removeprefix("-") if field.startswith("-") else f"-{field}"
