"""The head that all money papers share: who it is from with logo and numbers, to whom, and facts in two columns."""

import re
from collections.abc import Sequence
from dataclasses import replace

from reportlab.lib.units import mm
from reportlab.platypus import Flowable, Paragraph, Spacer

from invoicing.documents.invoice_content import Party
from invoicing.documents.logo import LOGO_WIDTH, logo_block
from invoicing.domain.country_names import abroad
from trimops.paper.colours import Tint
from trimops.paper.sheet import TEXT_WIDTH
from trimops.paper.styles import LEAD, SMALL, TITLE, style, words
from trimops.paper.tables import Cell, bare_table

Fact = tuple[str, str]
_DAY = re.compile(r"\b(\d{1,2}) ([A-Z][a-z]{2}) (\d{4})\b")
_MARK = 42 * mm
_TO = 76 * mm
_GAP = 6 * mm


def paper_head(business: Party, tax_name: str, mark: str, title: str, logo: bytes | None) -> list[Flowable]:
    """The business over the title; `mark` says at the right what kind of paper it is.

    Raises LogoUnreadable when `logo` is no picture.
    """
    lines = [
        words(business.name, style(LEAD, bold=True)),
        *(words(line, style(SMALL, tint=Tint.QUIET)) for line in _business_lines(business, tax_name)),
    ]
    cells: list[Cell] = [lines, words(mark, style(SMALL, tint=Tint.QUIET, align="right"))]
    widths = [TEXT_WIDTH - _MARK, _MARK]
    if logo:
        cells.insert(0, logo_block(logo))
        widths = [LOGO_WIDTH + _GAP, TEXT_WIDTH - _MARK - LOGO_WIDTH - _GAP, _MARK]
    return [
        bare_table([cells], widths, pad=4),
        words(_days_whole(title), style(TITLE, bold=True, before=2, after=8)),
    ]


def _days_whole(title: str) -> str:
    """A day is not broken over two lines."""
    return _DAY.sub("\\1\u00a0\\2\u00a0\\3", title)


def _business_lines(business: Party, tax_name: str) -> list[str]:
    reach = ", ".join(part for part in (*business.address, business.phone, business.email) if part)
    return [line for line in (reach, " · ".join(_numbers(business, tax_name))) if line]


def _numbers(party: Party, tax_name: str) -> list[str]:
    tax = [f"{tax_name} number {party.tax_number}"] if party.tax_number else []
    name = party.registration_name or "Registration number"
    return [*tax, *([f"{name} {party.registration}"] if party.registration else []), *party.more]


def from_and_to(business: Party, party: Party) -> tuple[Party, Party]:
    """Both as they stand on a paper from one to the other: over a border each address ends with its country."""
    return over_the_border(business, party), over_the_border(party, business)


def over_the_border(party: Party, other: Party) -> Party:
    """With its country in words as the last line of the address, where the other's is another one."""
    name = abroad(party.country, other.country)
    last = party.address[-1].strip().casefold() if party.address else ""
    if not name or last in (name.casefold(), party.country.casefold()):
        return party
    return replace(party, address=(*party.address, name))


def to_and_facts(party: Party, tax_name: str, facts: Sequence[Fact]) -> list[Flowable]:
    """To whom on the left, the facts in two columns beside it."""
    half = (len(facts) + 1) // 2
    each = (TEXT_WIDTH - _TO - 2 * _GAP) / 2
    row: list[Cell] = [_to(party, tax_name), "", _facts(facts[:half]), "", _facts(facts[half:])]
    return [bare_table([row], [_TO, _GAP, each, _GAP, each]), Spacer(0, 12)]


def _to(party: Party, tax_name: str) -> list[Flowable]:
    lines = [words(line) for line in (*party.address, *_numbers(party, tax_name))]
    return [label("To"), words(party.name, style(bold=True)), *lines]


def _facts(facts: Sequence[Fact]) -> list[Flowable] | str:
    told: list[Flowable] = []
    for name, value in facts:
        told += [label(name), words(value, style(after=4))]
    return told or ""


def label(text: str) -> Paragraph:
    """What the words below it are."""
    return words(text, style(SMALL, bold=True, tint=Tint.QUIET))
