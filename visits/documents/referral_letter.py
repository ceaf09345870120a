"""The letter that hands a cow to the vet, as PDF: one page A4."""

from collections.abc import Mapping, Sequence

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, KeepTogether, Paragraph, Spacer

from trimops.paper.colours import Meaning, Tint
from trimops.paper.days import day_short_year
from trimops.paper.footing import footing
from trimops.paper.headings import SignedHeading, heading, section
from trimops.paper.letterhead import letterhead_block
from trimops.paper.photos import Photo, PhotoRow
from trimops.paper.sheet import TEXT_WIDTH, SheetInfo, build_sheet
from trimops.paper.styles import TITLE, style, words
from trimops.paper.tables import Cell, bare_table
from trimops.paper.to_pdf import DrawingBlock
from trimops.paper.typefaces import BOLD
from trimops.paper.wording import markup
from visits.documents.referral_letter_content import Known, LetterFoot, ReferralLetterContent
from visits.documents.referral_letter_words import (
    NO_DIAGNOSIS,
    NOBODY_TOLD,
    foot_told,
    letter_change,
    letter_facts,
    letter_title,
    photo_words,
)
from visits.documents.sole_drawing import sole_drawing

_TEXT = 10.0
_GAP = 12.0


_ONE_SOLE, _SEVERAL_SOLES = 46.0, 34.0
_LEAST_PHOTO, _MOST_PHOTO = 28 * mm, 75 * mm


def referral_letter(letter: ReferralLetterContent, pictures: Mapping[str, bytes]) -> bytes:
    """The PDF; `pictures` are the photos' bytes by their ids. The same letter and pictures give the same bytes."""
    day = day_short_year(letter.visit_day)
    version = "" if letter.version == 1 else f", version {letter.version}"
    info = SheetInfo(
        title=letter_title(letter),
        author=letter.letterhead.name,
        subject=f"Letter to the vet about cow {letter.cow}, seen on {day}{version}",
        made_at=letter.made_at,
        footer=footing((letter.letterhead.name, letter.farm_name), f"cow {letter.cow}, {day}{version}"),
    )
    across = _ONE_SOLE if len(letter.feet) == 1 else _SEVERAL_SOLES
    story = [
        *_top(letter),
        *(flowable for foot in letter.feet for flowable in _foot(foot, across)),
        *_end(letter),
        *_photos(letter, pictures),
    ]
    return build_sheet(story, info)


def _top(letter: ReferralLetterContent) -> list[Flowable]:
    mark = f"Letter to the vet {letter.reference}".strip()
    to = f"To {letter.addressed_to}" if letter.addressed_to else ""
    change = letter_change(letter)
    left = [*_known("The cow", letter.of_cow), *_lines("How she walks", letter.walked)]
    right = [*_known("The farm", letter.of_farm), *_lines("Who was told", letter.told or (NOBODY_TOLD,))]
    each = (TEXT_WIDTH - _GAP) / 2
    return [
        letterhead_block(letter.letterhead, "\n".join(part for part in (mark, to) if part)),
        words(letter_title(letter), style(TITLE, bold=True, after=3)),
        words(letter_facts(letter), style(tint=Tint.QUIET, after=6)),
        *([words(change, style(bold=True, after=4))] if change else []),
        bare_table([[left, "", right]], [each, _GAP, each]),
        *_lines("Why the vet", letter.whole_cow),
    ]


def _known(title: str, known: Sequence[Known]) -> list[Flowable]:
    rows: list[list[Cell]] = [
        [words(item.name, style(9.0, tint=Tint.QUIET)), words(item.value, style(_TEXT))] for item in known
    ]
    table = [bare_table(rows, [30 * mm, (TEXT_WIDTH - _GAP) / 2 - 30 * mm], pad=0.8)] if rows else []
    return [heading(title), *table]


def _lines(title: str, lines: Sequence[str]) -> list[Flowable]:
    return [heading(title), *(words(line, style(_TEXT)) for line in lines)] if lines else []


def _foot(foot: LetterFoot, sole: float) -> list[Flowable]:
    """The drawing, `sole` mm across, beside what is said of the foot."""
    told = foot_told(foot)
    across = sole * mm + _GAP
    said: list[Flowable] = [_item(name, text) for name, text in told.said]
    drawing = DrawingBlock(sole_drawing(told.sole, sole))
    table = bare_table([[drawing, said]], [across, TEXT_WIDTH - across], pad=4)
    return [Spacer(0, 6), KeepTogether([SignedHeading(told.heading, Meaning.URGENT), table])]


def _item(name: str, text: str) -> Paragraph:
    return Paragraph(
        f'<font name="{BOLD}">{markup(name, BOLD)}:</font> {markup(text)}', style(_TEXT, after=2)
    )


def _end(letter: ReferralLetterContent) -> list[Flowable]:
    cautions = (NO_DIAGNOSIS, *letter.cautions)
    return [
        *_lines("Trimmer's note", (letter.note,) if letter.note else ()),
        Spacer(0, 6),
        *(words(text, style(9.5, after=2)) for text in cautions),
    ]


def _photos(letter: ReferralLetterContent, pictures: Mapping[str, bytes]) -> list[Flowable]:
    """Last, since they take what room is left."""
    if not letter.photos:
        return []
    photos = [Photo(pictures.get(photo.uid, b""), photo_words(photo)) for photo in letter.photos]
    more = f" (and {letter.photos_left_out} more at the trimmer's)" if letter.photos_left_out else ""
    row = PhotoRow(photos, least=_LEAST_PHOTO, most=_MOST_PHOTO)
    return [*section(f"Photos{more}", _LEAST_PHOTO + 40), row]
