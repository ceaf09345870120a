"""Letters to the vet to draw, with pictures made up on the spot."""

from dataclasses import replace
from datetime import date, datetime
from io import BytesIO
from zoneinfo import ZoneInfo

from PIL import Image

from trimops.paper.letterhead import Letterhead
from visits.documents.referral_letter_content import (
    Earlier,
    Known,
    LetterFoot,
    LetterPhoto,
    ReferralLetterContent,
)
from visits.documents.visit_report_content import Found
from visits.domain.feet import FEET_IN_ORDER, Claw, Foot

AT = datetime(2026, 12, 1, 10, 20, tzinfo=ZoneInfo("Europe/London"))


def jpeg(width=64, height=48, colour="#886655"):
    out = BytesIO()
    Image.new("RGB", (width, height), colour).save(out, "JPEG")
    return out.getvalue()


def foot_of(foot=Foot.LEFT_HIND):
    return LetterFoot(
        foot=foot,
        why=("blood drawn or sensitive tissue open: work on this foot stopped", "hot above the horn"),
        found=(Found("toe ulcer", Claw.LATERAL, 1, "white line at the toe", 3, True),),
        signs=("pain to the hoof testers", "sensitive tissue open"),
        done=("trimmed", "loose horn off"),
        not_done=("work on this foot stopped", "no block put on"),
        earlier=(Earlier(date(2026, 8, 12), "Sole ulcer, clear: outer claw, where sole meets heel (4)"),),
    )


def make_letter(feet=1, photos=2, **changes):
    """A letter about so many feet with so many photos; any field may be replaced by name."""
    letter = ReferralLetterContent(
        letterhead=Letterhead("Skelderdale Foot Trimming", ("2 Mill Lane", "Skelder"), "01632 960 001"),
        farm_name="High Thornbeck",
        cow="412",
        visit_day=AT.date(),
        made_at=AT,
        trimmer="Ann Brook",
        addressed_to="J. Marsden",
        reference="no. 12-77",
        of_cow=(Known("Number", "412"), Known("Official ear tag", "UK 123456 700123")),
        of_farm=(Known("Farm", "High Thornbeck"), Known("Phone", "01632 960 777")),
        walked=("Walked in at 3 (UK 0 to 3).",),
        feet=tuple(foot_of(foot) for foot in FEET_IN_ORDER[:feet]),
        told=("J. Marsden was told on 1 Dec 2026, 10:20: hot above the horn.",),
        note="She lay down in the crush.",
        photos=tuple(LetterPhoto(f"photo-{n}", "0" * 64, AT, Foot.LEFT_HIND) for n in range(photos)),
    )
    return replace(letter, **changes)
