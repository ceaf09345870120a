"""Each outside engine is spoken to by one adapter file; what changes in it changes there."""

import pytest

from tests.architecture.source_tree import imported_names, name_of, product_files, tree_of


@pytest.mark.parametrize(
    "engine", ["pyvrp", "vroom", "geographiclib", "icalendar", "openpyxl", "dj_database_url"]
)
def test_an_engine_has_one_adapter_file(engine):
    homes = [
        name_of(path)
        for path in product_files()
        if any(name.split(".")[0] == engine for name, _ in imported_names(tree_of(path)))
    ]
    assert len(homes) == 1, homes
