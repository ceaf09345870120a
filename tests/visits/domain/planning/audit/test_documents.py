import pytest

from visits.domain.planning.audit.documents import Unreadable, read_document


def test_an_object_is_read():
    assert read_document('{"a": [1, 2.5, null]}') == {"a": [1, 2.5, None]}


@pytest.mark.parametrize(
    ("text", "fault"),
    [
        ('{"a": 1,\n x}', "line 2 column 2: "),
        ('{"a": 1, "a": 2}', '$: the name "a" is given twice in one object'),
        ('{"a": Infinity}', "$: Infinity is not a JSON number"),
        ("3", "$: is not an object"),
    ],
)
def test_what_is_no_document_is_refused(text, fault):
    with pytest.raises(Unreadable) as refusal:
        read_document(text)
    assert refusal.value.faults[0].startswith(fault)
