"""Turning a running text into the bytes of a PDF: A4, numbered pages, fonts inside, same input same bytes."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from functools import partial
from io import BytesIO

from reportlab.lib.colors import HexColor
from reportlab.lib.pagesizes import A4
from reportlab.lib.units import mm
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import BaseDocTemplate, Flowable, Frame, PageTemplate

from trimops.paper.numbered_canvas import NumberedCanvas
from trimops.paper.typefaces import BODY, BOLD, ONE_DRAWS, register_typefaces
from trimops.paper.wording import clean

MARGIN = 15 * mm
FOOT_ROOM = 9 * mm
PAGE_WIDTH, PAGE_HEIGHT = A4
TEXT_WIDTH = PAGE_WIDTH - 2 * MARGIN
TEXT_HEIGHT = PAGE_HEIGHT - 2 * MARGIN - FOOT_ROOM
_WATERMARK = HexColor("#e0ddd5")


@dataclass(frozen=True)
class SheetInfo:
    """What a PDF says of itself. `made_at` is an aware instant, handed in so that the bytes depend on it alone."""

    title: str
    author: str
    subject: str
    made_at: datetime
    footer: str
    language: str = "en-GB"
    watermark: str = ""


def build_sheet(story: Sequence[Flowable], info: SheetInfo, *, packed: bool = True) -> bytes:
    """The PDF of `story`: every page ends with `footer` and "page 2 of 3". ValueError if `made_at` is naive.

    Not `packed`: streams are left as they are, for one who opens the file and packs it when he saves it.
    """
    pdf, _ = build_counted(story, info, packed=packed)
    return pdf


def build_counted(story: Sequence[Flowable], info: SheetInfo, *, packed: bool = True) -> tuple[bytes, int]:
    """As `build_sheet`, with the number of pages. Of several threads one draws at a time."""
    if info.made_at.tzinfo is None:
        raise ValueError("made_at has no time zone")
    register_typefaces()
    out = BytesIO()
    template = _template(out, info, packed=packed)
    with ONE_DRAWS:
        template.build(list(story), canvasmaker=_canvas_maker(info))
    return out.getvalue(), template.page


def _template(out: BytesIO, info: SheetInfo, *, packed: bool) -> BaseDocTemplate:
    template = BaseDocTemplate(
        out,
        pagesize=A4,
        title=clean(info.title),
        author=clean(info.author),
        subject=clean(info.subject),
        creator="trimops",
        lang=info.language,
        initialFontName=BODY,
        invariant=1,
        pageCompression=int(packed),
    )
    frame = Frame(
        MARGIN,
        MARGIN + FOOT_ROOM,
        TEXT_WIDTH,
        TEXT_HEIGHT,
        leftPadding=0,
        rightPadding=0,
        topPadding=0,
        bottomPadding=0,
    )
    template.addPageTemplates(PageTemplate(frames=[frame], onPage=partial(_write_watermark, info.watermark)))
    return template


def _write_watermark(word: str, canvas: Canvas, _template: BaseDocTemplate) -> None:
    """The word across the page, under everything else."""
    if not word:
        return
    canvas.saveState()
    canvas.translate(PAGE_WIDTH / 2, PAGE_HEIGHT / 2)
    canvas.rotate(52)
    canvas.setFillColor(_WATERMARK)
    canvas.setFont(BOLD, 170)
    canvas.drawCentredString(0, -60, word)
    canvas.restoreState()


def _canvas_maker(info: SheetInfo) -> Callable[..., Canvas]:
    made_at = info.made_at.astimezone(UTC)
    return partial(NumberedCanvas, footer=info.footer, made_at=made_at)
