from xml.etree import ElementTree

import pytest
from django.template import TemplateSyntaxError, engines


def drawn(body, columns="Farm | Cows #", **context):
    text = '{% load sheets %}{% sheet caption "' + columns + '" %}' + body + "{% endsheet %}"
    return engines["django"].from_string(text).render({"caption": "Visits & more", **context})


ROW = "{% row %}{% cell %} {{ farm }} {% endcell %}{% cell %}63{% endcell %}{% endrow %}"


def test_each_cell_is_named_after_its_column_and_the_first_heads_the_row():
    table = ElementTree.fromstring(drawn(ROW, farm="Fold"))
    head, cell = table.find("tbody/tr")
    assert (head.tag, head.get("scope"), head.text) == ("th", "row", "Fold")
    assert (cell.tag, cell.get("data-label"), cell.get("class"), cell.text) == ("td", "Cows", "number", "63")


def test_heads_and_roles_are_written_out():
    table = ElementTree.fromstring(drawn(ROW, farm="Fold"))
    assert table.find("caption").text == "Visits & more"
    assert [(th.text, th.get("role")) for th in table.findall("thead/tr/th")] == [
        ("Farm", "columnheader"),
        ("Cows", "columnheader"),
    ]
    assert {part.get("role") for part in table.iter() if part.tag == "tr"} == {"row"}


def test_columns_start_afresh_with_every_row():
    table = ElementTree.fromstring(
        drawn("{% for farm in farms %}" + ROW + "{% endfor %}", farms=["Fold", "Bank"])
    )
    assert [td.get("data-label") for td in table.iter("td")] == ["Cows", "Cows"]


def test_what_a_cell_shows_is_escaped_once():
    assert "A &amp; &lt;b&gt;" in drawn(ROW, farm="A & <b>")


def test_a_row_of_sums_is_told_apart():
    assert 'class="row-total"' in drawn('{% row "total" %}{% cell %}All{% endcell %}{% endrow %}')


def test_a_row_with_too_many_cells_is_refused():
    with pytest.raises(ValueError, match="more cells than"):
        drawn("{% row %}{% cell %}1{% endcell %}{% cell %}2{% endcell %}{% cell %}3{% endcell %}{% endrow %}")


def test_a_sheet_without_columns_says_how_to_write_it():
    with pytest.raises(TemplateSyntaxError, match="Number column #"):
        engines["django"].from_string("{% load sheets %}{% sheet 'x' %}{% endsheet %}")


def test_a_row_may_be_of_several_kinds():
    assert 'class="row-total row-one"' in drawn('{% row "total one" %}{% cell %}All{% endcell %}{% endrow %}')
