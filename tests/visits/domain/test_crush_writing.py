"""The kinds of writings are those of the wire, each with a word for people."""

from visits.domain.crush_writing import WritingKind


def test_the_kinds_are_those_of_the_wire_and_each_has_its_word():
    assert {kind.value: kind.label for kind in WritingKind} == {
        "cow": "Cow",
        "wash": "Wash-down",
        "kit": "Kit used",
        "blade": "Blades in hand",
        "sign_off": "Sign-off",
    }
