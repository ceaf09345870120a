from invoicing.documents.sums_table import LARGE, sums_table


def test_what_is_to_be_paid_stands_out_between_the_sums_and_what_is_said_below():
    table = sums_table(
        [("Net", "£1.00"), ("Tax", "£0.20")], ("To pay", "£1.20"), [200, 80], [("In euro", "€1.40")]
    )
    rows = table._cellvalues
    assert [[cell.getPlainText() for cell in row] for row in rows] == [
        ["Net", "£1.00"],
        ["Tax", "£0.20"],
        ["To pay", "£1.20"],
        ["In euro", "€1.40"],
    ]
    assert [{cell.style.fontSize == LARGE for cell in row} for row in rows] == [
        {False},
        {False},
        {True},
        {False},
    ]
    assert {cell.style.alignment for _, cell in rows} == {2}
