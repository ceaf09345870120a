"""The adapter asks the real engine; what it says is held against shortest paths computed by SciPy."""

import math
from dataclasses import replace

import pytest

from tests.roads.small_network import ISLAND, SIDE
from visits.roads.road_engine import RoadsUnavailable
from visits.roads.roads_server import roads_server

pytestmark = pytest.mark.roads
FAR_AWAY = (56.0, -4.0)


def test_all_drives_of_the_network_are_those_of_the_shortest_paths(network, roads_address):
    seconds, metres = network.shortest()
    some = list(range(0, SIDE * SIDE, 2))
    points = [network.nodes[n] for n in some]
    table = roads_server(roads_address).table(points, points, 5)
    for row, a in enumerate(some):
        for column, b in enumerate(some):
            leg = table[row][column]
            # The engine measures short stretches more simply than we do (0.07 %) and counts tenths of a second.
            assert leg.seconds == pytest.approx(seconds[a, b], rel=0.001, abs=0.5)
            assert leg.metres == pytest.approx(metres[a, b], rel=0.001, abs=1)


def test_a_one_way_lane_makes_the_way_back_another_drive(network, roads_address):
    west, east = network.nodes[2 * SIDE + 1], network.nodes[2 * SIDE + 2]
    table = roads_server(roads_address).table([west, east], [west, east], 5)
    assert table[1][0].seconds > 1.5 * table[0][1].seconds


def test_an_island_has_no_drive_to_the_rest(network, roads_address):
    table = roads_server(roads_address).table([ISLAND, network.nodes[0]], [network.nodes[0], ISLAND], 5)
    assert (table[0][0], table[1][1]) == (None, None)
    assert table[1][0].seconds == 0


def test_a_place_off_the_map_loses_its_own_drives_and_no_others(network, roads_address):
    near, other = network.nodes[0], network.nodes[40]
    table = roads_server(roads_address).table([near, FAR_AWAY], [other, FAR_AWAY, near], 5)
    assert table[0][0].metres > 1000
    assert table[0][1] is None
    assert set(table[1]) == {None}


def test_more_than_the_server_takes_is_a_refusal_in_words(network, roads_address):
    many = [network.nodes[n % 81] for n in range(101)]
    with pytest.raises(RoadsUnavailable, match="TooBig"):
        roads_server(roads_address).table(many, many, 5)


def test_an_address_below_which_nothing_is_served_is_told(roads_address, network):
    with pytest.raises(RoadsUnavailable):
        replace(roads_server(roads_address), address=roads_address + "/nowhere").table(
            network.nodes[:2], network.nodes[:2], 5
        )


def test_places_beside_the_road_are_moved_onto_it(network, roads_address):
    (latitude, longitude), end = network.nodes[10], network.nodes[30]
    exact, beside = roads_server(roads_address).table(
        [(latitude, longitude), (latitude + 0.001, longitude)], [end], 5
    )
    assert math.isclose(exact[0].seconds, beside[0].seconds, abs_tol=60)
