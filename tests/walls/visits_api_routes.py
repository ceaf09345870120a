"""The rows of tests/walls/routes.py for the API of the work, a table for each part."""

from tests.walls.route import Route
from trimops.accounts.actions import Action
from trimops.accounts.roles import EVERYONE

VISITS_API: dict[str, Route] = {
    "api_farm_csv": Route(EVERYONE, {"pk": "farm"}, does={"get": Action.TAKE_DATA_OUT}),
    "api_farm_xlsx": Route(EVERYONE, {"pk": "farm"}, does={"get": Action.TAKE_DATA_OUT}),
    "api_farm_ade": Route(EVERYONE, {"pk": "farm"}, does={"get": Action.TAKE_DATA_OUT}),
    "api_visits": Route(EVERYONE, does={"get": Action.SEE_VISITS, "post": Action.KEEP_VISITS}),
    "api_visit": Route(EVERYONE, {"pk": "planned"}, does={"get": Action.SEE_VISITS}),
    "api_visit_plan": Route(EVERYONE, {"pk": "planned"}, does={"post": Action.KEEP_VISITS}),
    "api_visit_confirm": Route(EVERYONE, {"pk": "planned"}, does={"post": Action.KEEP_VISITS}),
    "api_visit_tell_hour": Route(EVERYONE, {"pk": "planned"}, does={"post": Action.KEEP_VISITS}),
    "api_visit_put_off": Route(EVERYONE, {"pk": "planned"}, does={"post": Action.KEEP_VISITS}),
    "api_visit_call_off": Route(EVERYONE, {"pk": "planned"}, does={"post": Action.KEEP_VISITS}),
    "api_visit_start": Route(EVERYONE, {"pk": "planned"}, does={"post": Action.WORK_AT_CRUSH}),
    "api_visit_finish": Route(EVERYONE, {"pk": "under_way"}, does={"post": Action.WORK_AT_CRUSH}),
    "api_visit_expect_cows": Route(EVERYONE, {"pk": "planned"}, does={"post": Action.KEEP_VISITS}),
    "api_draft_list": Route(EVERYONE, {"pk": "planned"}, does={"get": Action.SEE_VISITS}),
    "api_draft_add": Route(EVERYONE, {"pk": "planned"}, does={"post": Action.KEEP_DRAFT}),
    "api_draft_strike": Route(EVERYONE, {"pk": "planned"}, does={"post": Action.KEEP_DRAFT}),
    "api_draft_take_back": Route(
        EVERYONE, {"pk": "draft_visit", "change_pk": "draft_change"}, does={"post": Action.KEEP_DRAFT}
    ),
    "api_draft_pdf": Route(EVERYONE, {"pk": "planned"}, does={"get": Action.SEE_VISITS}),
    "api_draft_rule_sets": Route(EVERYONE, does={"get": Action.SEE_EVERY_FARM}),
    "api_draft_rules": Route(
        EVERYONE, {"pk": "farm"}, does={"get": Action.SEE_EVERY_FARM, "patch": Action.KEEP_VISITS}
    ),
    "api_scorings": Route(
        EVERYONE, {"pk": "farm"}, does={"get": Action.KEEP_DRAFT, "post": Action.KEEP_DRAFT}
    ),
    "api_scoring": Route(EVERYONE, {"pk": "scoring"}, does={"get": Action.KEEP_DRAFT}),
    "api_herd_figures": Route(EVERYONE, {"pk": "farm"}, does={"get": Action.SEE_WORK}),
    "api_herd_year": Route(EVERYONE, {"pk": "farm"}, fixed={"year": 2026}, does={"get": Action.SEE_WORK}),
    "api_rechecks": Route(EVERYONE, does={"get": Action.SEE_COWS}),
    "api_recheck": Route(EVERYONE, {"pk": "recheck"}, does={"get": Action.SEE_COWS}),
    "api_blocks": Route(EVERYONE, does={"get": Action.SEE_COWS}),
    "api_visit_trims": Route(EVERYONE, {"pk": "finished"}, does={"get": Action.SEE_COWS}),
    "api_cow_trims": Route(EVERYONE, {"pk": "cow"}, does={"get": Action.SEE_COWS}),
    "api_cow_versions": Route(EVERYONE, {"pk": "cow"}, does={"get": Action.SEE_EVERY_FARM}),
    "api_trim": Route(EVERYONE, {"pk": "trim"}, does={"get": Action.SEE_COWS}),
    "api_photos": Route(EVERYONE, {"pk": "finished"}, does={"get": Action.SEE_COWS}),
    "api_photo_file": Route(EVERYONE, {"pk": "finished", "uid": "photo"}, does={"get": Action.SEE_COWS}),
    "api_reports": Route(EVERYONE, {"pk": "finished"}, does={"get": Action.SEE_WORK}),
    "api_report_issue": Route(EVERYONE, {"pk": "finished"}, does={"post": Action.KEEP_WORK}),
    "api_report": Route(EVERYONE, {"pk": "report"}, does={"get": Action.SEE_WORK}),
    "api_report_pdf": Route(EVERYONE, {"pk": "report"}, does={"get": Action.SEE_WORK}),
    "api_letters": Route(EVERYONE, {"pk": "finished"}, does={"get": Action.SEE_WORK}),
    "api_letter_issue": Route(EVERYONE, {"pk": "trim"}, does={"post": Action.KEEP_WORK}),
    "api_letter": Route(EVERYONE, {"pk": "letter"}, does={"get": Action.SEE_WORK}),
    "api_letter_pdf": Route(EVERYONE, {"pk": "letter"}, does={"get": Action.SEE_WORK}),
    "api_visit_uses": Route(
        EVERYONE, {"pk": "finished"}, does={"get": Action.SEE_KIT, "post": Action.WORK_AT_CRUSH}
    ),
    "api_crush_papers": Route(EVERYONE, {"pk": "under_way"}, does={"get": Action.WORK_AT_CRUSH}),
    "api_visit_messages": Route(EVERYONE, {"pk": "finished"}, does={"get": Action.SEE_DIARY}),
    "api_message_rules": Route(EVERYONE, does={"get": Action.KEEP_MESSAGES, "patch": Action.KEEP_MESSAGES}),
    "api_message_switch": Route(EVERYONE, does={"post": Action.KEEP_MESSAGES}),
    "api_message_texts": Route(EVERYONE, does={"get": Action.KEEP_MESSAGES}),
    "api_message_look": Route(EVERYONE, does={"post": Action.KEEP_MESSAGES}),
    "api_message_text_write": Route(EVERYONE, does={"post": Action.KEEP_MESSAGES}),
    "api_calendars": Route(EVERYONE, does={"get": Action.GIVE_CALENDARS, "post": Action.GIVE_CALENDARS}),
    "api_calendar": Route(EVERYONE, {"pk": "farm_calendar"}, does={"get": Action.GIVE_CALENDARS}),
    "api_calendar_close": Route(EVERYONE, {"pk": "farm_calendar"}, does={"post": Action.GIVE_CALENDARS}),
    "api_outside_calendars": Route(
        EVERYONE, {"pk": "van"}, does={"get": Action.KEEP_VANS, "post": Action.KEEP_VANS}
    ),
    "api_outside_calendar": Route(
        EVERYONE, {"pk": "outside_calendar"}, does={"get": Action.KEEP_VANS, "delete": Action.KEEP_VANS}
    ),
    "api_outside_busy": Route(EVERYONE, {"pk": "outside_calendar"}, does={"get": Action.KEEP_VANS}),
    "api_outside_read": Route(EVERYONE, {"pk": "outside_calendar"}, does={"post": Action.KEEP_VANS}),
    "api_watches": Route(EVERYONE, does={"get": Action.KEEP_WATCH}),
    "api_watch": Route(EVERYONE, {"pk": "lone_watch"}, does={"get": Action.KEEP_WATCH}),
    "api_watch_well": Route(EVERYONE, {"pk": "lone_watch"}, does={"post": Action.KEEP_WATCH}),
    "api_watch_rules": Route(EVERYONE, does={"get": Action.KEEP_WATCH, "patch": Action.KEEP_WATCH}),
    "api_watch_try": Route(EVERYONE, does={"post": Action.KEEP_WATCH}),
    "api_watch_contacts": Route(EVERYONE, does={"get": Action.KEEP_WATCH, "post": Action.KEEP_WATCH}),
    "api_watch_contact": Route(
        EVERYONE,
        {"pk": "watch_contact"},
        does={"get": Action.KEEP_WATCH, "patch": Action.KEEP_WATCH, "delete": Action.KEEP_WATCH},
    ),
}
PLANS_API: dict[str, Route] = {
    "api_plans": Route(EVERYONE, does={"get": Action.SEE_WEEKS}),
    "api_plan": Route(EVERYONE, {"pk": "week_plan"}, does={"get": Action.SEE_WEEKS}),
    "api_plan_problem": Route(EVERYONE, {"pk": "week_plan"}, does={"get": Action.SEE_WEEKS}),
    "api_plan_enough": Route(EVERYONE, {"pk": "week_plan"}, does={"post": Action.PLAN_WEEKS}),
    "api_plan_prove": Route(EVERYONE, {"pk": "week_plan"}, does={"post": Action.PLAN_WEEKS}),
    "api_plan_accept": Route(EVERYONE, {"pk": "week_plan"}, does={"post": Action.PLAN_WEEKS}),
    "api_plan_bring_back": Route(EVERYONE, {"pk": "week_plan"}, does={"post": Action.PLAN_WEEKS}),
    "api_plan_drop": Route(EVERYONE, {"pk": "week_plan"}, does={"post": Action.PLAN_WEEKS}),
    "api_plan_change": Route(EVERYONE, {"pk": "replan"}, does={"get": Action.SEE_WEEKS}),
    "api_plan_against": Route(
        EVERYONE, {"pk": "week_plan", "other": "replan"}, does={"get": Action.SEE_WEEKS}
    ),
    "api_day_sheet": Route(
        EVERYONE, {"pk": "week_plan", "shift": "plan_shift"}, does={"get": Action.SEE_WEEKS}
    ),
    "api_stop_places": Route(
        EVERYONE, {"pk": "week_plan", "visit_pk": "planned"}, does={"get": Action.PLAN_WEEKS}
    ),
    "api_stop_move": Route(
        EVERYONE, {"pk": "week_plan", "visit_pk": "planned"}, does={"post": Action.PLAN_WEEKS}
    ),
    "api_stop_lock": Route(
        EVERYONE, {"pk": "week_plan", "visit_pk": "planned"}, does={"post": Action.PLAN_WEEKS}
    ),
    "api_stop_unlock": Route(
        EVERYONE, {"pk": "week_plan", "visit_pk": "planned"}, does={"post": Action.PLAN_WEEKS}
    ),
    "api_week_plans": Route(
        EVERYONE, fixed={"week": "2026-03-02"}, does={"get": Action.SEE_WEEKS, "post": Action.PLAN_WEEKS}
    ),
    "api_week_problem": Route(EVERYONE, fixed={"week": "2026-03-02"}, does={"get": Action.SEE_WEEKS}),
    "api_happening_late": Route(EVERYONE, fixed={"week": "2026-03-02"}, does={"post": Action.PLAN_WEEKS}),
    "api_happening_out": Route(EVERYONE, fixed={"week": "2026-03-02"}, does={"post": Action.PLAN_WEEKS}),
    "api_happening_ill": Route(EVERYONE, fixed={"week": "2026-03-02"}, does={"post": Action.PLAN_WEEKS}),
    "api_happening_off": Route(EVERYONE, fixed={"week": "2026-03-02"}, does={"post": Action.PLAN_WEEKS}),
    "api_happening_lame": Route(EVERYONE, fixed={"week": "2026-03-02"}, does={"post": Action.PLAN_WEEKS}),
}
OFFERS_API: dict[str, Route] = {
    "api_wishes": Route(EVERYONE, {"pk": "farm"}, does={"post": Action.ASK_VISITS}),
    "api_offers": Route(EVERYONE, {"pk": "farm"}, does={"get": Action.ASK_VISITS}),
    "api_hold": Route(EVERYONE, {"pk": "farm"}, does={"post": Action.ASK_VISITS}),
    "api_held_hours": Route(EVERYONE, does={"get": Action.ASK_VISITS}),
    "api_held_hour": Route(EVERYONE, {"pk": "held"}, does={"get": Action.ASK_VISITS}),
    "api_held_take": Route(EVERYONE, {"pk": "held"}, does={"post": Action.ASK_VISITS}),
    "api_held_let_go": Route(EVERYONE, {"pk": "held"}, does={"post": Action.ASK_VISITS}),
}
WORK_API = {**VISITS_API, **PLANS_API, **OFFERS_API}
