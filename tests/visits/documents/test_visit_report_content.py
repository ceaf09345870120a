from datetime import date

import pytest

from visits.documents.visit_report_content import CowLine, FootLine, Found
from visits.domain.feet import Claw, Foot


@pytest.mark.parametrize(
    ("cow", "is_plain"),
    [
        (CowLine("1", "functional trim"), True),
        (CowLine("1", "functional trim", (FootLine(Foot.LEFT_HIND, done=("modelled",)),)), True),
        (
            CowLine(
                "1", "functional trim", (FootLine(Foot.LEFT_HIND, (Found("Sole ulcer", Claw.LATERAL),)),)
            ),
            False,
        ),
        (CowLine("1", "functional trim", (FootLine(Foot.LEFT_HIND, block_on=Claw.MEDIAL),)), False),
        (CowLine("1", "functional trim", (FootLine(Foot.LEFT_HIND, recheck_on=date(2026, 12, 8)),)), False),
        (CowLine("1", "functional trim", note="kicks"), False),
    ],
)
def test_a_cow_is_plain_when_there_is_nothing_to_tell(cow, is_plain):
    assert cow.is_plain is is_plain
