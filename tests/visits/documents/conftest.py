"""Invented visits to draw: typical mixes of findings after the published rates of trade-facts 4."""

from collections.abc import Callable
from dataclasses import replace
from io import BytesIO

import pytest
from pypdf import PdfReader

from tests.visits.documents.made_reports import DAY, LETTERHEAD, at, made_report
from visits.documents.draft_list_content import DraftCow, DraftGroup, DraftList
from visits.documents.visit_report_content import (
    VisitReport,
)


@pytest.fixture
def make_report() -> Callable[..., VisitReport]:
    """A report of `cows` cows; any field may be replaced by name."""
    return made_report


@pytest.fixture
def text_of() -> Callable[[bytes], str]:
    """All text of a PDF, read by pypdf, white space run together."""

    def read(pdf: bytes) -> str:
        return " ".join(" ".join(page.extract_text() for page in PdfReader(BytesIO(pdf)).pages).split())

    return read


@pytest.fixture
def make_draft() -> Callable[..., DraftList]:
    """A draft list of `cows` cows in three needs; any field may be replaced by name."""

    def make(cows: int = 28, /, **changes: object) -> DraftList:
        lines = [DraftCow(str(300 + number), f"last trim {150 + number} days ago") for number in range(cows)]
        lines[:2] = [
            DraftCow("214", "lame: 3 of 0-3, since 28 Nov"),
            DraftCow("87", "lame: 2 of 0-3, since 20 Nov"),
        ][:cows]
        if cows > 6:
            lines[5] = DraftCow("131", "dry-off in 6 days", "calves in 20 days: ask the vet first")
        groups = (
            DraftGroup("Lame now", tuple(lines[:2])),
            DraftGroup("Blocks and re-checks", tuple(lines[2:5])),
            DraftGroup("Trim due", tuple(lines[5:])),
        )
        draft = DraftList(
            letterhead=LETTERHEAD,
            farm_name="High Thornbeck",
            day=DAY,
            arrive=at(9, 40),
            made_at=at(6),
            groups=groups,
            left_for_next=(DraftCow("322", "last trim 148 days ago"), DraftCow("59", "72 days in milk")),
            prepare=(
                "Pen of 10 to 15 cows by the crush, way out clear.",
                "Water for washing, 13 A power, light.",
            ),
            cautions=(
                "No dry-off and trim on the same day. Within four weeks of calving: ask the vet first.",
            ),
            trimmer="Ann Brook",
            rule_note="By the farm's rules: lame first, blocks and re-checks, 3 to 10 days before dry-off.",
        )
        return replace(draft, **changes)  # type: ignore[arg-type]

    return make
