"""Reports of invented visits: typical mixes of findings after the published rates of trade-facts 4."""

from dataclasses import replace
from datetime import date, datetime
from decimal import Decimal
from zoneinfo import ZoneInfo

from trimops.paper.letterhead import Letterhead
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
SWELLING = "swelling above the dew claw, very lame (3 of 3)"
LETTERHEAD = Letterhead(
    "Skelderdale Foot Trimming",
    ("2 Mill Lane", "Skelder", "SK0 0AA"),
    "01632 960 001",
    "office@skelderdale.example",
)


def at(hour: int, minute: int = 0) -> datetime:
    return datetime(2026, 12, 1, hour, minute, tzinfo=LONDON)


def cow_line(number: int) -> CowLine:
    """Six in ten cows have nothing; the others one of five usual pictures. Cow 419's foot is the vet's."""
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
            (
                Found(
                    "Digital dermatitis",
                    Claw.SKIN,
                    10,
                    "cleft between the heels",
                    3,
                    stage="raw sore, over 2 cm",
                ),
            ),
            ("cleaned", "dressed"),
            None,
            date(2026, 12, 8),
        ),
        8: FootLine(
            Foot.LEFT_FORE, (Found("Heel horn erosion", Claw.MEDIAL, 6, "heel bulb", 2),), ("loose horn off",)
        ),
    }
    picture = pictures.get(number % 12)
    if picture and number == 19:
        picture = replace(picture, vet=(SWELLING,))
    return CowLine(
        str(400 + number), "corrective trim" if picture else "functional trim", (picture,) if picture else ()
    )


def made_report(cows: int = 30, /, **changes: object) -> VisitReport:
    """A report of `cows` cows; any field may be replaced by name."""
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
            SWELLING,
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
            FarmTask("Look at the dressed feet, take the dressing off", date(2026, 12, 4), ("407", "419")),
            FarmTask("Foot bath twice this week for the late group"),
        ),
        compared=(Comparison("last visit, 12 Aug", 28), Comparison("2 Dec 2025", 33)),
        findings=(
            FindingCount("Sole ulcer", min(cows, 3), (4, 2)),
            FindingCount("White line fissure", 3, (2, 5)),
            FindingCount("Sole haemorrhage", 3, (3, None)),
            FindingCount("Digital dermatitis", 2, (5, 6)),
            FindingCount("Heel horn erosion", 2, (1, 2)),
        )[: min(cows, 5)],
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
