"""The herd's page and its yearly paper, from rows to words."""

from datetime import UTC, datetime

import pytest
from django.test import Client
from django.urls import reverse

from tests.factories import blocked_foot, put_down, trimmed_foot, under_way
from tests.visits.selectors.test_business_herds import trimmed_herd
from trimops.kernel.errors import NotFound
from visits.domain.feet import Foot
from visits.selectors.herd_view import herd_view, herd_year_story

NOW = datetime(2026, 11, 30, 12, tzinfo=UTC)


def test_six_pictures_each_with_a_sentence_and_drawn_where_there_is_something_to_draw(house):
    house.farm.herd_size = 8
    trimmed_herd(house, "", 2, 5, farm=house.farm)
    view = herd_view(house.scope, house.farm, NOW)
    assert len(view.pictures) == 6
    assert all(picture.finding.sentence for picture in view.pictures)
    assert view.pictures[0].svg.startswith("<svg")
    assert view.facts == (
        "Herd of 8 cows. 7 cows seen in the year up to 30 November 2026, at 1 visit; 7 looks at a cow in all."
    )
    assert view.years == (2026,)


def test_a_herd_without_a_cow_at_the_crush_says_so_and_claims_nothing(house):
    view = herd_view(house.scope, house.farm, NOW)
    assert view.answer == "too few cows to tell yet"
    assert not [picture for picture in view.pictures if picture.svg or picture.finding.kind.tells]
    assert (view.tables, view.years) == ((), ())


def test_the_paper_of_a_year_tells_of_that_year_and_of_no_year_without_a_cow(house):
    put_down(under_way(house.farm, house.van), house.cow, blocked_foot(), trimmed_foot(Foot.RIGHT_HIND))
    story = herd_year_story(house.scope, house.farm, 2026, NOW)
    assert (story.year, story.farm_name) == (2026, "Low Croft")
    assert story.answer.startswith("Low Croft: ")
    assert "in 2026 up to 30 November 2026" in story.facts
    with pytest.raises(NotFound):
        herd_year_story(house.scope, house.farm, 2025, NOW)


def test_the_page_asks_the_database_at_most_twelve_times(house, django_assert_max_num_queries):
    trimmed_herd(house, "", 2, 3, farm=house.farm)
    client = Client()
    client.force_login(house.owner)
    client.get(reverse("farm_list"))
    with django_assert_max_num_queries(12):
        assert client.get(reverse("herd_figures", args=[house.farm.pk])).status_code == 200


def test_the_year_on_paper_is_a_pdf_for_the_farm_too_and_the_page_is_not(house):
    put_down(under_way(house.farm, house.van), house.cow, blocked_foot())
    client = Client()
    client.force_login(house.client)
    answer = client.get(reverse("herd_year", args=[house.farm.pk, 2026]))
    assert answer.content.startswith(b"%PDF-")
    assert client.get(reverse("herd_figures", args=[house.farm.pk])).status_code == 403
