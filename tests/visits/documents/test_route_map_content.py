from tests.visits.documents.map_places import ONE, TWO, valley
from visits.documents.route_map_content import MapRoute, RouteMap


def test_farms_wear_their_turn_on_the_route():
    assert ONE.numbered() == {"f0": "1", "f1": "2", "f2": "3", "f3": "4"}


def test_with_two_routes_a_letter_tells_them_apart():
    numbers = TWO.numbered()
    assert (numbers["f0"], numbers["f3"], numbers["f4"], numbers["f6"]) == ("A1", "A4", "B1", "B3")


def test_a_farm_called_at_twice_keeps_its_first_number():
    content = RouteMap("t", valley(), (MapRoute("Ann", ("yard", "f0", "f1", "f0", "yard")),))
    assert content.numbered() == {"f0": "1", "f1": "2"}
