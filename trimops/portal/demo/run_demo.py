"""The whole demo, from the empty business to the eleven files."""

from dataclasses import dataclass
from datetime import timedelta
from pathlib import Path

from trimops.audit.unaudited import unaudited
from trimops.portal.demo.bill_last_visits import bill_last_visits
from trimops.portal.demo.build_demo import Built, DemoWishes, Tell, build_demo
from trimops.portal.demo.issue_papers import issue_last_reports, write_letters
from trimops.portal.demo.keep_money import keep_money
from trimops.portal.demo.let_it_run import let_it_run
from trimops.portal.demo.papers import (
    write_after_visit,
    write_calendar,
    write_draft_list,
    write_herd_year,
    write_letter,
    write_money,
    write_week,
)
from trimops.portal.demo.plan_the_week import PlannedWeek, plan_the_week
from trimops.portal.demo.ready_visit import ready_visit
from trimops.portal.demo.record_one_visit import MadeVisit, choose_visit, record_one_visit
from trimops.portal.demo.settle_money import settle_money
from trimops.portal.demo.wipe_demo import refuse_other_businesses
from trimops.portal.demo.wish_week import wish_week
from visits.models import Visit
from visits.services.learn_visit_lengths import learn_visit_lengths


@dataclass(frozen=True)
class DemoOutcome:
    """What was done, for the account of it."""

    wishes: DemoWishes
    built: Built
    billed: int
    wanted: int
    week: PlannedWeek
    made: MadeVisit
    ready: Visit
    folder: Path
    calendar_secret: str


def run_demo(wishes: DemoWishes, folder: Path, tell: Tell) -> DemoOutcome:
    """Build, plan, make one visit, write the papers. RuleBroken says in words what stands in the way."""
    refuse_other_businesses()
    folder.mkdir(parents=True, exist_ok=True)
    with unaudited("a history that was invented, by nobody: some hundred thousand rows at once"):
        built = build_demo(wishes, tell)
    crew, at = built.crew, wishes.dawn
    tell("The last visits are billed", 0.55)
    keep_money(crew, wishes.first_day, at)
    billed = bill_last_visits(crew, wishes.today)
    settle_money(crew, billed, at)
    tell("What the visits teach of their length", 0.6)
    learn_visit_lengths(business=crew.business, at=at)
    issue_last_reports(crew, at, built.farms)
    ready = ready_visit(crew, wishes.today, at)
    let_it_run(crew, at)
    tell("The coming week: what is wanted", 0.62)
    wanted = wish_week(crew, wishes.today, wishes.monday, at)
    tell("The coming week: planning", 0.65)
    week = plan_the_week(crew, wishes.monday, at, wishes.seconds)
    write_week(folder, week)
    tell("One visit is made", 0.9)
    visit = choose_visit(crew, stops_of(week.plan))
    write_draft_list(folder, visit, at)
    made = record_one_visit(crew, visit, at + timedelta(minutes=5), wishes.seed)
    tell("Papers", 0.95)
    write_after_visit(folder, made)
    write_money(folder, made, at)
    write_letter(folder, write_letters(crew, made.visit, made.visit.finished_at or at))
    write_herd_year(folder, made, at)
    secret = write_calendar(folder, crew, at)
    tell("Done", 1)
    return DemoOutcome(wishes, built, len(billed), wanted, week, made, ready, folder, secret)


def stops_of(plan: dict[str, object]) -> set[int]:
    """Keys of the visits that a plan document holds."""
    shifts = plan["shifts"]
    if not isinstance(shifts, list):
        return set()
    return {int(stop["job"].removeprefix("visit-")) for shift in shifts for stop in shift["stops"]}
