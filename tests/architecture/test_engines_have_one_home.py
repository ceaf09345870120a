"""Each outside engine is spoken to by one adapter file; what changes in it changes there."""

import pytest

from tests.architecture.source_tree import imported_names, name_of, product_files, tree_of

# because: the audit measures distances anew, so that it shares no fault with the plan that it checks
# because: a herd list that comes in is read as far below as it is understood, what goes out is written above
HOMES = {"geographiclib": 2, "httpx": 2, "openpyxl": 2}


@pytest.mark.parametrize(
    "engine",
    [
        "pyvrp",
        "icalendar",
        "openpyxl",
        "dj_database_url",
        "httpx",
        "osrm",
        "numba",
        "highspy",
        "holidays",
        "prometheus_client",
        "sentry_sdk",
    ],
)
def test_an_engine_has_one_adapter_file(engine):
    homes = [
        name_of(path)
        for path in product_files()
        if any(name.split(".")[0] == engine for name, _ in imported_names(tree_of(path)))
    ]
    assert len(homes) == HOMES.get(engine, 1), homes
