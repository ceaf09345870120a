"""Tables that a phone can read: below 40rem every row becomes a short stack of named lines.

    {% sheet "Visits this week" "Farm | When | Cows #" %}
      {% row %}{% cell %}Upper Fold{% endcell %}{% cell %}Tue{% endcell %}{% cell %}63{% endcell %}{% endrow %}
    {% endsheet %}

Columns are parted by `|`; a column that ends in `#` holds numbers and is set to the right. The first cell of a
row is its head. The ARIA roles are written out because browsers drop them when a table is laid out as blocks.
"""

from collections.abc import Iterator
from dataclasses import dataclass

from django import template
from django.template.base import FilterExpression, NodeList, Parser, Token
from django.template.context import Context
from django.utils.html import conditional_escape, format_html, format_html_join
from django.utils.safestring import SafeString, mark_safe

register = template.Library()

COLUMNS = "sheet_columns"
CELLS = "sheet_cells"


@dataclass(frozen=True)
class Column:
    """One head: its words, whether its cells are numbers."""

    label: str
    is_number: bool

    @property
    def css(self) -> SafeString:
        return mark_safe(' class="number"') if self.is_number else mark_safe("")  # because: two constants


def read_columns(line: str) -> tuple[Column, ...]:
    """`"Farm | Cows #"` is a column of words and one of numbers."""
    parts = [part.strip() for part in line.split("|")]
    return tuple(Column(part.rstrip("# "), part.endswith("#")) for part in parts)


def _head(columns: tuple[Column, ...]) -> SafeString:
    return format_html_join(
        "",
        '<th role="columnheader" scope="col"{}>{}</th>',
        ((column.css, column.label) for column in columns),
    )


class SheetNode(template.Node):
    """Draws caption and heads, and tells the rows inside which columns there are."""

    def __init__(self, nodelist: NodeList, caption: FilterExpression, columns: FilterExpression) -> None:
        self.nodelist = nodelist
        self.caption = caption
        self.columns = columns

    def render(self, context: Context) -> SafeString:
        columns = read_columns(str(self.columns.resolve(context)))
        with context.push(**{COLUMNS: columns}):
            body = self.nodelist.render(context)
        return format_html(
            '<table class="sheet" role="table"><caption>{}</caption><thead role="rowgroup"><tr role="row">{}</tr>'
            '</thead><tbody role="rowgroup">{}</tbody></table>',
            conditional_escape(self.caption.resolve(context)),
            _head(columns),
            body,
        )


class RowNode(template.Node):
    """One row; `{% row "total" %}` is the row of sums, which stands under a heavier rule.

    `"one"` is a name and one figure: side by side on a phone, without the name of the column. `"pairs"` sets its
    figures two by two there. Several kinds have a space between them.
    """

    def __init__(self, nodelist: NodeList, kind: FilterExpression | None) -> None:
        self.nodelist = nodelist
        self.kind = kind

    def render(self, context: Context) -> SafeString:
        kind = "" if self.kind is None else str(self.kind.resolve(context))
        with context.push(**{CELLS: enumerate(context[COLUMNS])}):
            cells = self.nodelist.render(context)
        css = format_html(' class="{}"', " ".join(f"row-{each}" for each in kind.split())) if kind else ""
        return format_html('<tr role="row"{}>{}</tr>', css, cells)


@register.tag
def sheet(parser: Parser, token: Token) -> SheetNode:
    """`{% sheet caption columns %}rows{% endsheet %}`."""
    bits = token.split_contents()
    if len(bits) != 3:
        raise template.TemplateSyntaxError('write {% sheet "caption" "Column | Number column #" %}')
    nodelist = parser.parse(("endsheet",))
    parser.delete_first_token()
    return SheetNode(nodelist, parser.compile_filter(bits[1]), parser.compile_filter(bits[2]))


@register.tag
def row(parser: Parser, token: Token) -> RowNode:
    """`{% row %}cells{% endrow %}` or `{% row "total" %}`."""
    bits = token.split_contents()
    nodelist = parser.parse(("endrow",))
    parser.delete_first_token()
    return RowNode(nodelist, parser.compile_filter(bits[1]) if len(bits) > 1 else None)


@register.simple_block_tag(takes_context=True)
def cell(context: Context, content: str) -> SafeString:
    """The next cell of the row, named after its column. Raises ValueError when the row has too many."""
    cells: Iterator[tuple[int, Column]] = context[CELLS]
    at, column = next(cells, (None, None))
    if at is None or column is None:
        raise ValueError("this row has more cells than the sheet has columns")
    words = mark_safe(content.strip())  # because: rendered, and so escaped, by the template
    if at == 0:
        return format_html('<th role="rowheader" scope="row"{}>{}</th>', column.css, words)
    return format_html('<td role="cell" data-label="{}"{}>{}</td>', column.label, column.css, words)
