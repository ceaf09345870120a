import pytest

from visits.domain.planning.problem_faults import ProblemFaults
from visits.domain.planning.problem_text import document


@pytest.mark.parametrize(
    ("text", "line"),
    [
        ('{"a": 1,\n "b": }', "line 2, column 7: is not JSON (expecting value)"),
        ("", "line 1, column 1: is not JSON (expecting value)"),
        ("[1]", "document: is not a JSON object"),
        ('{"a": ' * 100_000, "document: is nested too deeply"),
        ('{"a": ' + "9" * 5000 + "}", "document: holds a number with far too many digits"),
    ],
)
def test_text_that_is_no_document_is_one_fault(text, line):
    with pytest.raises(ProblemFaults) as caught:
        document(text)
    assert caught.value.faults == [line]


def test_a_key_given_twice_is_named_with_its_path():
    read, faults = document('{"jobs": [{"id": 1}, {"id": 1, "id": 2}], "jobs2": 3, "jobs2": 4}')
    assert faults == ["jobs2: is given twice", "jobs[1].id: is given twice"]
    assert read["jobs2"] == 4
