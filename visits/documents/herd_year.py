"""A herd's feet in one year, as PDF: at most six pictures with their findings, then the rest in short tables."""

from collections.abc import Iterator, Sequence

from reportlab.lib.colors import HexColor
from reportlab.lib.units import mm
from reportlab.platypus import Flowable, HRFlowable, PageBreak, Spacer

from trimops.paper.colours import HEX, Tint
from trimops.paper.days import day_short_year
from trimops.paper.drawing import Drawing
from trimops.paper.footing import footing
from trimops.paper.headings import section
from trimops.paper.letterhead import letterhead_block
from trimops.paper.moving import Move
from trimops.paper.sheet import TEXT_HEIGHT, TEXT_WIDTH, SheetInfo, build_sheet
from trimops.paper.styles import LEAD, SMALL, TEXT, TITLE, style, words
from trimops.paper.tables import Cell, Column, bare_table, ruled_table
from trimops.paper.to_pdf import DrawingBlock
from trimops.paper.typefaces import register_typefaces
from visits.documents.herd.two_columns import fewest_pages
from visits.documents.herd_story_content import HOW_TO_READ, FigureRow, FigureTable, HerdPicture, HerdStory

_COLUMN = 84 * mm
_GAP = TEXT_WIDTH - 2 * _COLUMN
_TALLEST = 150.0
_ON_PAPER = 0.85
_ROOM = TEXT_HEIGHT - 6.0
Card = list[Flowable]


def herd_year(story: HerdStory) -> bytes:
    """The PDF. The same story gives the same bytes. ValueError if `made_at` has no time zone."""
    register_typefaces()
    head = _head(story)
    parts: list[Flowable] = [
        *head,
        *_placed([_card(picture) for picture in story.pictures], _height(head, TEXT_WIDTH)),
    ]
    for table in story.tables:
        parts += _table(table)
    return build_sheet(parts, _info(story))


def _head(story: HerdStory) -> list[Flowable]:
    parts: list[Flowable] = [
        letterhead_block(story.letterhead, f"Feet of the herd, {story.year}"),
        words(story.answer, style(TITLE, bold=True, after=3)),
        words(story.facts, style(tint=Tint.QUIET, after=2)),
    ]
    reading = (HOW_TO_READ,) if story.pictures else ()
    # At the top: at the end they could stand alone on a page.
    parts += [words(text, style(SMALL, tint=Tint.QUIET)) for text in (*reading, *story.cautions)]
    return [*parts, Spacer(0, 8)]


def _info(story: HerdStory) -> SheetInfo:
    made = day_short_year(story.made_at.date())
    return SheetInfo(
        title=story.answer,
        author=story.letterhead.name,
        subject=f"Feet of the herd of {story.farm_name}, {story.year}",
        made_at=story.made_at,
        footer=footing((story.letterhead.name, story.farm_name), f"feet in {story.year} · made {made}"),
    )


def _card(picture: HerdPicture) -> Card:
    """What it is, the finding, the drawing, and what it rests on."""
    parts: list[Flowable] = [
        HRFlowable(width="100%", thickness=0.8, color=HexColor(HEX[Tint.INK]), spaceBefore=0, spaceAfter=3),
        words(picture.title, style(TEXT, bold=True, tint=Tint.QUIET, after=1)),
        words(picture.sentence, style(LEAD, bold=True, after=5)),
    ]
    if picture.drawing:
        parts += [DrawingBlock(_held(picture.drawing)), Spacer(0, 3)]
    if picture.basis:
        parts.append(words(picture.basis, style(SMALL, tint=Tint.QUIET)))
    return [*parts, Spacer(0, 8)]


def _held(drawing: Drawing) -> Drawing:
    """The drawing, smaller than on a phone so that its words are as large as those around it; smaller still where it
    would not fit its column or leave no room for words."""
    scale = min(_ON_PAPER, _COLUMN / mm / drawing.width, _TALLEST / drawing.height)
    move = Move(scale, scale)
    shapes = tuple(move.shape(shape) for shape in drawing.shapes)
    return Drawing(drawing.width * scale, drawing.height * scale, shapes, drawing.title, drawing.description)


def _placed(cards: Sequence[Card], head: float) -> list[Flowable]:
    """The cards in two columns a page, never split; a card taller than a page runs over pages by itself at the end."""
    fitting = [card for card in cards if _height(card) <= _ROOM]
    alone = [part for card in cards if _height(card) > _ROOM for part in card]
    parts: list[Flowable] = []
    for columns in fewest_pages([_height(card) for card in fitting], _ROOM - head, _ROOM):
        left, right = ([part for order in column for part in fitting[order]] for column in columns)
        parts += [bare_table([[left, "", right]], [_COLUMN, _GAP, _COLUMN]), PageBreak()]
    return parts[:-1] + alone


def _height(parts: Sequence[Flowable], width: float = _COLUMN) -> float:
    return sum(part.wrap(width, 10_000)[1] + part.getSpaceBefore() + part.getSpaceAfter() for part in parts)


def _table(table: FigureTable) -> list[Flowable]:
    parts: list[Flowable] = list(section(table.title))
    if table.note:
        parts.append(words(table.note, style(after=4)))
    if not table.rows:
        return [*parts, words("Nothing to tell yet.", style(tint=Tint.QUIET))]
    columns = [Column("", 48 * mm), Column("", 62 * mm), Column("rests on", TEXT_WIDTH - 110 * mm)]
    return [*parts, ruled_table(columns, [list(_cells(row)) for row in table.rows])]


def _cells(row: FigureRow) -> Iterator[Cell]:
    yield words(row.what)
    yield words(row.figure, style(bold=True))
    source = [words(f"Source: {row.source}", style(SMALL, tint=Tint.QUIET))] if row.source else []
    yield [words(row.basis, style(SMALL)), *source] if row.basis else source
