"""The draft list for the parlour wall, as PDF: large type, a box to tick for each cow."""

from reportlab.platypus import Flowable, Spacer

from trimops.paper.colours import Meaning, Tint
from trimops.paper.days import clock, day_long, day_short_year
from trimops.paper.figures import counted
from trimops.paper.footing import footing
from trimops.paper.headings import SignedHeading, section
from trimops.paper.letterhead import letterhead_block
from trimops.paper.sheet import SheetInfo, build_sheet
from trimops.paper.styles import TITLE, style, words
from visits.documents.draft_list_content import DraftList
from visits.documents.draft_list_rows import draft_table

_LARGE = 12.0


def draft_list(draft: DraftList) -> bytes:
    """The PDF. The same list gives the same bytes. ValueError if `made_at` has no time zone."""
    title = draft_title(draft)
    story = [
        *_top(draft, title),
        *_cows(draft),
        *_by_number(draft),
        *_struck(draft),
        *_left(draft),
        *_mind(draft),
    ]
    info = SheetInfo(
        title=f"{draft.farm_name}: {title}",
        author=draft.letterhead.name,
        subject=f"Cows to bring for foot trimming on {day_short_year(draft.day)}",
        made_at=draft.made_at,
        footer=footing((draft.letterhead.name, draft.farm_name), f"list for {day_short_year(draft.day)}"),
    )
    return build_sheet(story, info)


def draft_title(draft: DraftList) -> str:
    """ "Bring 28 cows, Tuesday 1 December 2026, 09:40"; without an hour the day is the first on which it may be."""
    day = day_long(draft.day)
    when = f"{day}, {clock(draft.arrive)}" if draft.arrive else f"from {day}, no hour yet"
    return (
        f"Bring {counted(draft.count, 'cow')}, {when}" if draft.count else f"No cows on the list yet, {when}"
    )


def _top(draft: DraftList, title: str) -> list[Flowable]:
    who = _who_comes(draft)
    parts: list[Flowable] = [
        letterhead_block(draft.letterhead, "Draft list"),
        words(draft.farm_name, style(14, bold=True, tint=Tint.QUIET)),
        words(title.replace(", ", "\n", 1), style(TITLE + 4, bold=True, after=4)),
    ]
    if who:
        parts.append(words(who, style(_LARGE, after=4)))
    if draft.time_note:
        parts.append(words(draft.time_note, style(_LARGE, after=4)))
    if draft.prepare:
        parts.append(SignedHeading("Ready before we come", Meaning.PLANNED))
        parts += [words(line, style(_LARGE, before=3)) for line in draft.prepare]
    return [*parts, Spacer(0, 10)]


def _who_comes(draft: DraftList) -> str:
    """ "Van 1 arrives at 09:40, likely between 09:25 and 10:05." """
    if not draft.trimmer or draft.arrive is None:
        return ""
    who = f"{draft.trimmer} arrives at {clock(draft.arrive)}"
    if draft.likely is None:
        return f"{who}."
    earliest, latest = draft.likely
    return f"{who}, likely between {clock(earliest)} and {clock(latest)}."


def _cows(draft: DraftList) -> list[Flowable]:
    if not draft.count:
        return [words("Nobody is due by the farm's rules. Tell us which cows you want seen.", style(_LARGE))]
    parts: list[Flowable] = [draft_table(draft.groups)]
    if draft.rule_note:
        parts.append(words(draft.rule_note, style(9, tint=Tint.QUIET, before=4)))
    return parts


def _by_number(draft: DraftList) -> list[Flowable]:
    """For whoever sorts them out at the gate and goes by numbers."""
    numbers = sorted(
        (cow.number for group in draft.groups for cow in group.cows), key=lambda name: name.zfill(20)
    )
    if len(numbers) < 2:
        return []
    return [*section("By number", 60), words(",  ".join(numbers), style(14, bold=True, after=4))]


def _left(draft: DraftList) -> list[Flowable]:
    if not draft.left_for_next:
        return []
    lines = [
        words(f"{cow.number}: {cow.why}{f' ({cow.warning})' if cow.warning else ''}", style(10.5, after=2))
        for cow in draft.left_for_next
    ]
    left = max(draft.left_count, len(draft.left_for_next))
    if left > len(draft.left_for_next):
        lines.append(words(f"And {left - len(draft.left_for_next)} more.", style(10.5)))
    return [*section(f"Left for next time: {counted(left, 'cow')}", 60), *lines]


def _struck(draft: DraftList) -> list[Flowable]:
    if not draft.struck:
        return []
    lines = [
        words(f"{cow.number}: {f'{cow.why}, ' if cow.why else ''}struck by {cow.by}", style(_LARGE, after=2))
        for cow in draft.struck
    ]
    return [*section(f"Do not bring: {counted(len(draft.struck), 'cow')}", 60), *lines]


def _mind(draft: DraftList) -> list[Flowable]:
    if not draft.cautions:
        return []
    return [*section("Please mind", 60), *[words(text, style(10.5, after=3)) for text in draft.cautions]]
