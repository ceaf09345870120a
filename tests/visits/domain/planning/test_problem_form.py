import pytest
from pydantic import ValidationError

from visits.domain.planning.problem_form import FixedForm, JobForm


@pytest.mark.parametrize(
    "text", ["2026-03-02T07:00Z", "2026-03-02T07:00:00.5+01:00", "2026-03-02T07:00:00.500-05:30"]
)
def test_instants_carry_an_offset(text):
    assert FixedForm.model_validate({"shift": "s", "start": text}).start == text


@pytest.mark.parametrize(
    "text",
    [
        "2026-03-02",
        "2026-03-02 07:00:00+00:00",
        "20260302T070000Z",
        "2026-03-02T24:00:00Z",
        "2026-W10-1T07:00Z",
    ],
)
def test_other_spellings_are_refused(text):
    with pytest.raises(ValidationError):
        FixedForm.model_validate({"shift": "s", "start": text})


def test_only_four_keys_of_a_job_are_required():
    form = JobForm.model_validate({"id": "j", "site": "s", "minutes": 5, "windows": []})
    assert (form.cows, form.crews, form.due, form.late_cost_per_day, form.leave_out_cost) == (
        0,
        None,
        None,
        0,
        None,
    )
