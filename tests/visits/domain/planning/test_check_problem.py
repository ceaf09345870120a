from visits.domain.planning.check_problem import Reading, faults_between
from visits.domain.planning.problem_form import BaseForm, JobForm, ShiftForm

YARD = BaseForm(id="yard", lat=54, lon=-2)


def test_a_part_that_could_not_be_read_is_no_reason_to_call_a_reference_to_it_wrong():
    day = ShiftForm(id="s", crew="c", base="barn", start="2026-03-02T07:00:00Z", end="2026-03-02T08:00:00Z")
    visit = JobForm(id="j", site="lost", minutes=1, windows=[])
    assert faults_between(Reading([YARD, None], [None], None, [day], [visit])) == []


def test_the_same_reference_is_wrong_when_everything_could_be_read():
    visit = JobForm(id="j", site="lost", minutes=1, windows=[])
    assert faults_between(Reading([YARD], [], None, [], [visit])) == [
        'jobs[0].site: "lost" is no site of this problem'
    ]
