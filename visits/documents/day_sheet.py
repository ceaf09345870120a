"""The sheet for the dashboard, as PDF: one page for one van's day, in the largest type that the page holds."""

from collections.abc import Iterator
from dataclasses import dataclass

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Spacer

from trimops.paper.colours import Tint
from trimops.paper.days import clock, day_short_year, length
from trimops.paper.figures import counted
from trimops.paper.footing import footing
from trimops.paper.letterhead import letterhead_block
from trimops.paper.sheet import TEXT_HEIGHT, TEXT_WIDTH, SheetInfo, build_sheet
from trimops.paper.signs import sign_drawing
from trimops.paper.styles import style, words
from trimops.paper.tables import Cell, Column, ruled_table
from trimops.paper.to_pdf import DrawingBlock
from visits.documents.day_sheet_content import DaySheet, SheetMeal, SheetStop

LARGE, SMALLEST = 15.0, 8.0


@dataclass(frozen=True)
class _Fit:
    """Type in points, how many letters of a long note are printed, and whether facts share a line."""

    size: float
    note: int = 220
    is_run_on: bool = False


FITS = (
    *(_Fit(size) for size in (LARGE, 13.0, 11.5, 10.0, 9.0)),
    *(_Fit(SMALLEST, note, is_run_on=True) for note in (220, 120, 60, 20)),
)


def day_sheet(sheet: DaySheet) -> bytes:
    """The PDF. The same day gives the same bytes. ValueError if `made_at` has no time zone."""
    info = SheetInfo(
        title=f"{sheet.van}, {sheet.title}",
        author=sheet.letterhead.name,
        subject=f"The round of {sheet.van} on {day_short_year(sheet.day)}",
        made_at=sheet.made_at,
        footer=footing(
            (sheet.letterhead.name, sheet.van), f"{day_short_year(sheet.day)}, as of {clock(sheet.made_at)}"
        ),
        watermark="PROPOSED" if sheet.is_proposed else "",
    )
    return build_sheet(_fitted(sheet), info)


def _fitted(sheet: DaySheet) -> list[Flowable]:
    """In the largest type in which it is one page, then with shorter notes; a day of twenty stops runs on."""
    for fit in FITS:
        if sum(_room(part) for part in _story(sheet, fit)) <= TEXT_HEIGHT:
            return _story(sheet, fit)
    return _story(sheet, FITS[-1])


def _room(part: Flowable) -> float:
    _, height = part.wrap(TEXT_WIDTH, 10_000)
    return float(height + part.getSpaceBefore() + part.getSpaceAfter())


def _story(sheet: DaySheet, fit: _Fit) -> list[Flowable]:
    size = fit.size
    round_trip = f"Leave {clock(sheet.leave)}, home by {clock(sheet.back)}, {sheet.km:.0f} km."
    parts: list[Flowable] = [
        letterhead_block(sheet.letterhead, f"{sheet.van}, day sheet"),
        words(sheet.title, style(size + 6, bold=True, after=3)),
        words(f"{sheet.van}. {round_trip}", style(size, bold=True, after=3)),
    ]
    if sheet.load:
        parts.append(words(f"Load: {'; '.join(sheet.load)}.", style(size - 1, after=3)))
    columns = (Column("", 27 * mm), Column("", 9 * mm), Column("", TEXT_WIDTH - 36 * mm))
    parts.append(ruled_table(columns, list(_rows(sheet, fit)), more=[("VALIGN", (0, 1), (-1, -1), "TOP")]))
    return [*parts, Spacer(0, 4), words(_mind(sheet), style(max(8.0, size - 3), tint=Tint.QUIET))]


def _rows(sheet: DaySheet, fit: _Fit) -> Iterator[list[Cell]]:
    meal = sheet.meal
    for stop in sheet.stops:
        if meal is not None and meal.start < stop.start:
            yield _meal(meal, fit.size)
            meal = None
        yield _stop(stop, fit)
    if meal is not None and meal.start < sheet.back:
        yield _meal(meal, fit.size)


def _meal(meal: SheetMeal, size: float) -> list[Cell]:
    return [
        words(clock(meal.start), style(size, tint=Tint.QUIET)),
        "",
        words(f"Meal, {length(meal.finish - meal.start)}", style(size, tint=Tint.QUIET)),
    ]


def _stop(stop: SheetStop, fit: _Fit) -> list[Cell]:
    size = fit.size
    hour = words(clock(stop.start), style(size + 7, bold=True))
    until = words(f"to {clock(stop.finish)}", style(size - 1, tint=Tint.QUIET))
    farm = f"{stop.farm} ({stop.mark})" if stop.mark else stop.farm
    lines: list[Flowable] = [words(farm, style(size + 3, bold=True))]
    facts = list(_facts(stop, fit.note))
    lines += [words(line, style(size)) for line in ([" · ".join(facts)] if fit.is_run_on else facts)]
    return [[hour, until], DrawingBlock(sign_drawing(stop.meaning, 5)), lines]


def _facts(stop: SheetStop, most: int) -> Iterator[str]:
    cows = counted(stop.cows, "cow")
    if stop.lame:
        some = "all" if stop.lame >= stop.cows else f"{stop.lame} of them"
        cows += f", {some} lame or to re-check"
    drive = f"drive {stop.drive_minutes} min, {stop.drive_km:.0f} km" if stop.drive_minutes else "no drive"
    yield f"{cows}; {drive}"
    yield f"Hygiene: {stop.hygiene}"
    if stop.ring:
        yield f"Ring {stop.ring}"
    if stop.way_in:
        yield f"Way in: {_short(stop.way_in, most)}"
    if stop.note:
        yield _short(stop.note, most)


def _short(text: str, most: int) -> str:
    line = " ".join(text.split())
    return line if len(line) <= most else f"{line[:most].rstrip()}…"


def _mind(sheet: DaySheet) -> str:
    order = "Wash down van, crush and boots between farms; the cleaner herds come first in this order."
    return f"{order} Late? Ring the next farm before you drive, never while."
