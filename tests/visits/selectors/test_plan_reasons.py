"""Reasons as a page shows them: names, money, and none that belong to another plan."""

from datetime import UTC, datetime

import pytest
from django.template.loader import render_to_string

from tests.factories import MONDAY, make_farm, wanted
from visits.domain.planning.solve_limits import SolveLimits
from visits.models import WeekPlan
from visits.selectors.plan_reasons import GONE, Why, names_of, reasons_of
from visits.services.ask_week_plan import ask_week_plan
from visits.services.give_reasons import give_reasons
from visits.services.think_week_plan import think_week_plan
from visits.templatetags.plan_reasons import why_of

SUNDAY_EVENING = datetime(2026, 3, 1, 19, tzinfo=UTC)


@pytest.fixture
def plan(house):
    wanted(house.farm)
    wanted(make_farm(house.business, "High Croft", by=house.owner, latitude=54.4))
    asked = ask_week_plan(business=house.business, monday=MONDAY, at=SUNDAY_EVENING, by=house.owner)
    think_week_plan(week_plan=asked, limits=SolveLimits(iterations=30), at=SUNDAY_EVENING)
    return WeekPlan.objects.within(house.scope).select_related("business").get(pk=asked.pk)


def jobs_of(plan):
    return [int(str(job["id"]).split("-")[1]) for job in plan.problem["jobs"]]


def test_each_visit_of_the_plan_has_sentences_with_names_and_money(plan, django_assert_num_queries):
    with django_assert_num_queries(3):
        reasons = reasons_of(plan)
    said = " ".join(sentence for pk in jobs_of(plan) for sentence in reasons.why(pk).sentences)
    assert "£" in said
    assert "visit-" not in said
    assert "van-" not in said
    assert reasons.complete
    assert reasons.ways[0].rule == ""
    assert len(reasons.ways) == 3
    assert reasons.ways[0].done == 2
    assert float(reasons.ways[0].money) == pytest.approx(plan.plan["cost"]["total"] / 100, abs=0.01)


def test_reasons_of_another_plan_are_not_shown(plan):
    first = plan.plan["shifts"][0]["stops"][0]
    first["start"] = "2026-03-02T09:59:00+00:00"
    assert reasons_of(plan) is None
    assert why_of(None, object()) is None


def test_a_plan_without_reasons_shows_none(plan):
    plan.reasons = None
    assert reasons_of(plan) is None


def test_a_visit_left_out_is_told_what_would_make_room(house, plan):
    for day in plan.problem["shifts"]:
        day["max_work_minutes"] = 30
    plan.plan |= {
        "shifts": [],
        "left_out": [{"job": job["id"], "reason": "no-room", "detail": "."} for job in plan.problem["jobs"]],
    }
    reasons = reasons_of(give_reasons(week_plan=plan))
    why = reasons.why(jobs_of(plan)[0])
    assert why.is_left_out
    assert any(house.van.name in sentence for sentence in why.sentences)


def test_what_is_gone_since_is_called_so(plan, house):
    names = names_of(plan)
    assert names.job(f"visit-{jobs_of(plan)[0]}") == house.farm.name
    assert names.job("visit-999999") == GONE
    assert names.job("held-999999") == GONE
    assert names.shift(f"van-{house.van.pk}-2026-03-02") == house.van.name
    assert names.shift("van-999999-2026-03-02") == "a van that is gone"
    assert names.money(123456) == "£1,234.56"


def test_the_parts_of_a_page_show_them(plan, house):
    reasons = reasons_of(plan)
    html = render_to_string("visits/_plan_reasons.html", {"reasons": reasons, "business": house.business})
    assert "This plan" in html
    assert html.count("<tr") == 4
    told = render_to_string("visits/_reasons.html", {"why": Why(("Because & so.",)), "name": "High Croft"})
    assert "Why here" in told
    assert "Because &amp; so." in told
    assert "What would make room" in render_to_string("visits/_reasons.html", {"why": Why(("So.",), True)})
    assert "<details" not in render_to_string("visits/_reasons.html", {"why": None})
