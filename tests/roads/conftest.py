"""The real road engine over the small network, once a test process."""

from pathlib import Path

import pytest

from tests.roads.small_network import small_network
from tests.services.osrm import has_wheel, osrm, prepare


@pytest.fixture(scope="session")
def network():
    return small_network()


@pytest.fixture(scope="session")
def extract(network, tmp_path_factory) -> Path:
    if not has_wheel():
        pytest.skip(
            "NO ROAD ENGINE IS PUBLISHED FOR THIS KIND OF MACHINE: drives by road are not tested here"
        )
    file = tmp_path_factory.mktemp("roads") / "small.osm"
    file.write_text(network.as_osm(), encoding="utf-8")
    return prepare(file, Path(__file__).with_name("plain_roads.lua"))


@pytest.fixture(scope="session")
def roads_address(extract):
    with osrm(extract) as address:
        yield address
