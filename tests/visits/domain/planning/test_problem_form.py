import pytest
from pydantic import ValidationError

from visits.domain.planning.problem_form import FixedForm, JobForm


def test_instants_are_kept_in_their_plain_form():
    assert FixedForm.model_validate({"shift": "s", "start": "2026-03-02T07:00Z"}).start == (
        "2026-03-02T07:00:00+00:00"
    )


def test_a_day_without_a_time_is_no_instant():
    with pytest.raises(ValidationError):
        FixedForm.model_validate({"shift": "s", "start": "2026-03-02"})


def test_a_whole_number_may_be_written_with_a_point():
    form = JobForm.model_validate({"id": "j", "site": "s", "minutes": 5, "windows": [], "cows": 28.0})
    assert (form.cows, type(form.cows)) == (28, int)


def test_only_four_keys_of_a_job_are_required():
    form = JobForm.model_validate({"id": "j", "site": "s", "minutes": 5, "windows": []})
    assert (form.cows, form.crews, form.due, form.late_cost_per_day, form.leave_out_cost) == (
        0,
        None,
        None,
        0,
        None,
    )
