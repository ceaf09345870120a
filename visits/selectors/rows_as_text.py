"""Rows of a subquery as the text of one JSON array of arrays, made by the database."""

from django.db.backends.base.base import BaseDatabaseWrapper
from django.db.models import Func, TextField
from django.db.models.sql.compiler import SQLCompiler

Sql = tuple[str, tuple[str | int, ...]]


class OneRow(Func):
    """The values of a row as a JSON array. Django's own asks the database first whether it knows JSON at all."""

    function = "JSON_ARRAY"
    output_field = TextField()

    def as_postgresql(self, compiler: SQLCompiler, connection: BaseDatabaseWrapper) -> Sql:
        return self.as_sql(compiler, connection, function="JSONB_BUILD_ARRAY")


class RowsAsText(Func):
    """All rows, of `(row, key)`: in the order of their keys where the database lets us say so; NULL or [] for none."""

    output_field = TextField()

    # because: Django asks for it without more words; those of the stubs are for what is written around it
    def as_sqlite(self, compiler: SQLCompiler, connection: BaseDatabaseWrapper) -> Sql:  # type: ignore[override]
        rows = self.copy()
        rows.set_source_expressions(self.get_source_expressions()[:1])
        return rows.as_sql(compiler, connection, template="JSON_GROUP_ARRAY(%(expressions)s)")

    def as_postgresql(self, compiler: SQLCompiler, connection: BaseDatabaseWrapper) -> Sql:
        template = "JSONB_AGG(%(expressions)s)::text"
        return self.as_sql(compiler, connection, template=template, arg_joiner=" ORDER BY ")
