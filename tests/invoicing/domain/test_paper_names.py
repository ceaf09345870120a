import pytest

from invoicing.domain.paper_names import paper_name


@pytest.mark.parametrize(
    ("number", "name"),
    [
        ("INV-2026-0001", "INV-2026-0001"),
        ("INV/26 1", "INV-26-1"),
        ('..\\"x"\r\n', "x"),
        ("Ä", "paper"),
    ],
)
def test_a_number_names_a_file_and_nothing_else(number, name):
    assert paper_name(number) == name
