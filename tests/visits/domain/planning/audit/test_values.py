import pytest

from visits.domain.planning.audit.values import DAY, INSTANT, MINUTES, NUMBER, SENTENCE, TEXT, Misread


def test_instants_are_exact_whatever_their_offset():
    assert INSTANT.read("1970-01-01T01:00:00.1+01:00") == 100_000
    assert INSTANT.read("1970-01-01T00:00:00Z") == 0


def test_decimals_are_taken_as_written():
    assert NUMBER.read(0.1) * 10 == 1
    assert MINUTES.read(10.5) == 630_000_000


def test_an_instant_may_end_a_day_at_24_hours():
    assert INSTANT.read("1970-01-01T24:00:00Z") == INSTANT.read("1970-01-02T00:00:00Z")


def test_a_whole_number_of_any_size_is_read():
    assert NUMBER.read(10**400) == 10**400


def test_an_id_may_be_a_blank_but_a_sentence_not():
    assert TEXT.read(" ") == " "
    with pytest.raises(Misread):
        SENTENCE.read(" ")


@pytest.mark.parametrize(
    ("kind", "value"), [(NUMBER, True), (NUMBER, "1"), (INSTANT, "2026-03-02"), (DAY, 3)]
)
def test_a_value_of_another_kind_is_misread(kind, value):
    with pytest.raises(Misread):
        kind.read(value)
