"""Pages of a list by cursor: what is added or taken away meanwhile neither repeats nor hides a row."""

from typing import Any
from urllib.parse import parse_qsl, urlencode, urlsplit

from django.core import signing
from rest_framework.pagination import Cursor, CursorPagination

from trimops.api.refusals import CannotBeMeant

MOST = 200
USUAL = 50
SALT = "trimops.api.cursor"


class SignedCursors(CursorPagination):
    """The library's cursors, signed, so that one that was made up is told instead of asked of the database.

    `of` names the list: a place in one is none in another. The last field of `ordering` is the row's own key: the
    library steps over equals by counting them.
    """

    cursor_query_param = "cursor"
    page_size_query_param = "limit"
    page_size = USUAL
    max_page_size = MOST

    def __init__(self, ordering: tuple[str, ...], of: str) -> None:
        self.order, self.of = ordering, of

    def get_ordering(self, request: Any, queryset: Any, view: Any) -> tuple[str, ...]:
        return self.order

    def decode_cursor(self, request: Any) -> Cursor | None:
        text = request.query_params.get(self.cursor_query_param)
        if text is None:
            return None
        try:
            offset, is_reverse, position, order, of = signing.loads(text, salt=SALT)
        except (signing.BadSignature, ValueError, TypeError):
            raise CannotBeMeant(
                faults=[("query.cursor", "Take the whole address of next or previous; do not make one.")]
            ) from None
        if (order, of) != (list(self.order), self.of):
            raise CannotBeMeant(
                faults=[("query.cursor", "It belongs to another list, or another order of it.")]
            )
        return Cursor(offset=offset, reverse=is_reverse, position=position)

    def encode_cursor(self, cursor: Cursor) -> str:
        place = [cursor.offset, cursor.reverse, cursor.position, list(self.order), self.of]
        text = signing.dumps(place, salt=SALT)
        where = urlsplit(str(self.base_url))
        said = parse_qsl(where.query, keep_blank_values=True)
        query = [pair for pair in said if pair[0] != self.cursor_query_param]
        return where._replace(query=urlencode([*query, (self.cursor_query_param, text)])).geturl()
