"""Invented visits to draw: typical mixes of findings after the published rates of trade-facts 4."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date, datetime
from decimal import Decimal
from io import BytesIO
from zoneinfo import ZoneInfo

import pytest
from pypdf import PdfReader

from trimops.paper.letterhead import Letterhead
from visits.documents.draft_list_content import DraftCow, DraftGroup, DraftList
from visits.documents.visit_report_content import (
    BlockLine,
    Comparison,
    Consumable,
    CowLine,
    FarmTask,
    FindingCount,
    FootLine,
    Found,
    HygieneStep,
    Signature,
    VetReferral,
    VisitReport,
)
from visits.domain.feet import Claw, Foot

LONDON = ZoneInfo("Europe/London")
DAY = date(2026, 12, 1)
LETTERHEAD = Letterhead(
    "Skelderdale Foot Trimming",
    ("2 Mill Lane", "Skelder", "SK0 0AA"),
    "01632 960 001",
    "office@skelderdale.example",
)


def at(hour: int, minute: int = 0) -> datetime:
    return datetime(2026, 12, 1, hour, minute, tzinfo=LONDON)


def cow_line(number: int) -> CowLine:
    """Six in ten cows have nothing; the others one of five usual pictures."""
    pictures = {
        0: FootLine(
            Foot.RIGHT_HIND,
            (Found("Sole ulcer", Claw.LATERAL, 4, "where sole meets heel", 2),),
            ("levelled with its partner", "weight taken off", "block on"),
            Claw.MEDIAL,
            date(2026, 12, 29),
        ),
        3: FootLine(
            Foot.LEFT_HIND,
            (Found("White line fissure", Claw.LATERAL, 3, "where outside wall meets heel", 1),),
            ("cut to length", "loose horn off"),
            None,
            date(2026, 12, 29),
        ),
        5: FootLine(
            Foot.LEFT_HIND,
            (Found("Sole haemorrhage", Claw.LATERAL, 5, "front of the sole", 1),),
            ("modelled",),
        ),
        7: FootLine(
            Foot.RIGHT_HIND,
            (Found("Digital dermatitis, stage M2", Claw.SKIN, 10, "cleft between the heels", 3),),
            ("cleaned", "dressed"),
            None,
            date(2026, 12, 8),
        ),
        8: FootLine(
            Foot.LEFT_FORE, (Found("Heel horn erosion", Claw.MEDIAL, 6, "heel bulb", 2),), ("loose horn off",)
        ),
    }
    picture = pictures.get(number % 12)
    return CowLine(
        str(400 + number), "corrective trim" if picture else "functional trim", (picture,) if picture else ()
    )


@pytest.fixture
def make_report() -> Callable[..., VisitReport]:
    """A report of `cows` cows; any field may be replaced by name."""

    def make(cows: int = 30, /, **changes: object) -> VisitReport:
        lines = tuple(cow_line(number) for number in range(cows))
        blocks = tuple(
            BlockLine(line.number, Foot.RIGHT_HIND, Claw.MEDIAL, "wooden block", DAY, date(2026, 12, 29))
            for line in lines
            if line.feet and line.feet[0].block_on
        )
        vet = (
            VetReferral(
                "419",
                Foot.RIGHT_HIND,
                "swelling above the dew claw, very lame (3 of 3)",
                "Told J. Marsden 10:20.",
            ),
        )
        report = VisitReport(
            letterhead=LETTERHEAD,
            farm_name="High Thornbeck",
            farm_address=("Thornbeck", "SK0 0AB"),
            visit_day=DAY,
            made_at=at(12),
            started=at(8, 30),
            finished=at(11, 35),
            trimmers=("Ann Brook",),
            reference="V-0142",
            herd_size=142,
            whole_herd=False,
            cows=lines,
            vet=vet if cows > 19 else (),
            blocks=blocks,
            to_do=(
                FarmTask("Keep on even, dry ground with little walking", None, ("400", "412", "424")),
                FarmTask(
                    "Look at the dressed feet, take the dressing off", date(2026, 12, 4), ("407", "419")
                ),
                FarmTask("Foot bath twice this week for the late group"),
            ),
            compared=(Comparison("last visit, 12 Aug", 28), Comparison("2 Dec 2025", 33)),
            findings=(
                FindingCount("Sole ulcer", 3, (4, 2)),
                FindingCount("White line fissure", 3, (2, 5)),
                FindingCount("Sole haemorrhage", 3, (3, None)),
                FindingCount("Digital dermatitis", 2, (5, 6)),
                FindingCount("Heel horn erosion", 2, (1, 2)),
            )
            if cows
            else (),
            consumables=(
                Consumable("wooden blocks, 130 mm", Decimal(3)),
                Consumable("block glue", Decimal(120), "ml"),
                Consumable("wraps", Decimal(2)),
                Consumable("disposable gloves", Decimal(6), "pairs"),
            ),
            hygiene_level="2, digital dermatitis active",
            hygiene_steps=(
                HygieneStep("Boots, leggings and crush washed before the first cow", True, at(8, 10)),
                HygieneStep("Knives in disinfectant between cows", True),
                HygieneStep("Crush and kit washed and disinfected before leaving", True, at(12, 5)),
            ),
            next_visit="Tuesday 29 December 2026, blocks and re-checks: 11 cows.",
            signed=(
                Signature("Ann Brook", "trimmer", at(11, 42)),
                Signature("J. Marsden", "for the farm", at(11, 45)),
            ),
            cautions=(
                "What is written here was seen at the trim; it is not a diagnosis. The vet decides on medicines.",
                "A cow with a block: even, dry ground and little walking; tell us if the block is lost.",
                "Late in pregnancy: ask the vet before a cow within four weeks of calving is brought to the crush.",
            ),
        )
        return replace(report, **changes)  # type: ignore[arg-type]

    return make


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
