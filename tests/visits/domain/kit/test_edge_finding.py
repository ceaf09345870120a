from tests.visits.domain.kit.some_edges import edges
from visits.domain.herd.survival_curve import Median
from visits.domain.kit.edge_curve import edge_curve
from visits.domain.kit.edge_finding import best_method, curve_finding


def told(text):
    return curve_finding("the edges from the belt", edge_curve(edges(text)))


def test_the_median_is_told_with_its_interval_and_what_it_rests_on():
    assert told("1 2 3 4 5 6 7 8 9 10 11+ 12+") == (
        "Half of the edges from the belt were dull by 6 cows (between 2 and 10); 12 edges, 10 of them went dull."
    )


def test_an_open_interval_says_at_least():
    assert "by 8 cows (at least 4);" in told("1 2 3 4 5 6 7 8 8 10+ 11+ 12+ 13+ 14+ 15+ 16+")


def test_while_more_than_half_still_cut_that_is_told():
    text = " ".join(str(n) for n in range(1, 9)) + " 20+" * 12
    assert told(text) == (
        "More than half of the edges from the belt still cut at 20 cows (60 of 100; 20 edges, 8 of them went dull)."
    )


def test_too_few_are_too_few():
    assert told("5 6 7+").startswith(
        "Too few to tell of the edges from the belt: 3 edges, 2 of them went dull"
    )
    assert told("5").startswith("Too few to tell of the edges from the belt: 1 edge, 1 of them")
    assert told("") == "Nothing is known of the edges from the belt yet."


def test_the_best_way_is_told_only_where_the_intervals_leave_gaps():
    sent, belt, stone = (
        ("Sent away", Median(40, 36, 45)),
        ("Belt", Median(30, 27, 34)),
        ("Stone", Median(25, 22, 29)),
    )
    assert (
        best_method([stone, sent, belt])
        == "Sent away: these edges last longest, by more than chance explains."
    )
    near = ("Belt", Median(37, 33, 41))
    assert best_method([sent, near, stone]) == (
        "Sent away lasts longer than stone; against the others it is too close to tell."
    )
    assert best_method([sent, near]).endswith("too close to tell yet.")
    assert best_method([sent]) == ""
