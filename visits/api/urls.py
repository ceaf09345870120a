from django.urls import include, path

from visits.api.calendars import CalendarApi, CalendarsApi, RevokeCalendarApi
from visits.api.crush_papers import CrushPapersApi
from visits.api.crush_photo import CrushPhotoApi
from visits.api.crush_writings import CrushWritingsApi
from visits.api.draft import (
    AddDraftCowApi,
    DraftApi,
    DraftListPdfApi,
    StrikeCowApi,
    TakeBackDraftChangeApi,
)
from visits.api.draft_rules import FarmRulesApi, RuleSetsApi
from visits.api.heard import HeardApi
from visits.api.herd import HerdFiguresApi, HerdYearApi
from visits.api.lone_watch import (
    TryWatchApi,
    WatchApi,
    WatchContactApi,
    WatchContactsApi,
    WatchesApi,
    WatchRulesApi,
    WatchWellApi,
)
from visits.api.messages import (
    LookAtMessageApi,
    MessageRulesApi,
    MessageTextsApi,
    SaveMessageTextApi,
    SwitchMessageApi,
    ToldApiOfVisit,
)
from visits.api.mobility import RoundApi, RoundsApi
from visits.api.outside_calendars import (
    OutsideBusyApi,
    OutsideCalendarApi,
    OutsideCalendarsApi,
    ReadOutsideCalendarApi,
)
from visits.api.papers import (
    IssueLetterApi,
    IssueReportApi,
    LetterApi,
    LetterPdfApi,
    LettersApi,
    ReportApi,
    ReportPdfApi,
    ReportsApi,
)
from visits.api.photos import PhotoFileApi, PhotosApi
from visits.api.rechecks import BlocksApi, RecheckApi, RechecksApi
from visits.api.trims import CowTrimsApi, CowVersionsApi, TrimApi, VisitTrimsApi
from visits.api.visit_steps import (
    CallOffVisitApi,
    ConfirmVisitApi,
    ExpectCowsApi,
    FinishVisitApi,
    PlanVisitApi,
    PutOffVisitApi,
    StartVisitApi,
    TellHourApi,
)
from visits.api.visit_uses import VisitUsesApi
from visits.api.visits import VisitApi, VisitsApi

urlpatterns = [
    path("", include("visits.api.kit_urls")),
    path("", include("visits.api.plans.urls")),
    path("visits/", VisitsApi.as_view(), name="api_visits"),
    path("visits/<int:pk>/", VisitApi.as_view(), name="api_visit"),
    path("visits/<int:pk>/plan/", PlanVisitApi.as_view(), name="api_visit_plan"),
    path("visits/<int:pk>/confirm/", ConfirmVisitApi.as_view(), name="api_visit_confirm"),
    path("visits/<int:pk>/tell-hour/", TellHourApi.as_view(), name="api_visit_tell_hour"),
    path("visits/<int:pk>/put-off/", PutOffVisitApi.as_view(), name="api_visit_put_off"),
    path("visits/<int:pk>/call-off/", CallOffVisitApi.as_view(), name="api_visit_call_off"),
    path("visits/<int:pk>/start/", StartVisitApi.as_view(), name="api_visit_start"),
    path("visits/<int:pk>/finish/", FinishVisitApi.as_view(), name="api_visit_finish"),
    path("visits/<int:pk>/expect-cows/", ExpectCowsApi.as_view(), name="api_visit_expect_cows"),
    path("visits/<int:pk>/draft/", DraftApi.as_view(), name="api_draft_list"),
    path("visits/<int:pk>/draft/add/", AddDraftCowApi.as_view(), name="api_draft_add"),
    path("visits/<int:pk>/draft/strike/", StrikeCowApi.as_view(), name="api_draft_strike"),
    path(
        "visits/<int:pk>/draft/changes/<int:change_pk>/take-back/",
        TakeBackDraftChangeApi.as_view(),
        name="api_draft_take_back",
    ),
    path("visits/<int:pk>/draft/pdf/", DraftListPdfApi.as_view(), name="api_draft_pdf"),
    path("draft-rule-sets/", RuleSetsApi.as_view(), name="api_draft_rule_sets"),
    path("farms/<int:pk>/draft-rules/", FarmRulesApi.as_view(), name="api_draft_rules"),
    path("farms/<int:pk>/scorings/", RoundsApi.as_view(), name="api_scorings"),
    path("scorings/<int:pk>/", RoundApi.as_view(), name="api_scoring"),
    path("farms/<int:pk>/herd-figures/", HerdFiguresApi.as_view(), name="api_herd_figures"),
    path("farms/<int:pk>/herd-years/<int:year>/pdf/", HerdYearApi.as_view(), name="api_herd_year"),
    path("rechecks/", RechecksApi.as_view(), name="api_rechecks"),
    path("rechecks/<int:pk>/", RecheckApi.as_view(), name="api_recheck"),
    path("blocks/", BlocksApi.as_view(), name="api_blocks"),
    path("visits/<int:pk>/trims/", VisitTrimsApi.as_view(), name="api_visit_trims"),
    path("cows/<int:pk>/trims/", CowTrimsApi.as_view(), name="api_cow_trims"),
    path("cows/<int:pk>/versions/", CowVersionsApi.as_view(), name="api_cow_versions"),
    path("trims/<int:pk>/", TrimApi.as_view(), name="api_trim"),
    path("visits/<int:pk>/photos/", PhotosApi.as_view(), name="api_photos"),
    path("visits/<int:pk>/photos/<uuid:uid>/file/", PhotoFileApi.as_view(), name="api_photo_file"),
    path("visits/<int:pk>/reports/", ReportsApi.as_view(), name="api_reports"),
    path("visits/<int:pk>/reports/issue/", IssueReportApi.as_view(), name="api_report_issue"),
    path("reports/<int:pk>/", ReportApi.as_view(), name="api_report"),
    path("reports/<int:pk>/pdf/", ReportPdfApi.as_view(), name="api_report_pdf"),
    path("visits/<int:pk>/letters/", LettersApi.as_view(), name="api_letters"),
    path("trims/<int:pk>/letters/issue/", IssueLetterApi.as_view(), name="api_letter_issue"),
    path("letters/<int:pk>/", LetterApi.as_view(), name="api_letter"),
    path("letters/<int:pk>/pdf/", LetterPdfApi.as_view(), name="api_letter_pdf"),
    path("visits/<int:pk>/uses/", VisitUsesApi.as_view(), name="api_visit_uses"),
    path("visits/<int:pk>/messages/", ToldApiOfVisit.as_view(), name="api_visit_messages"),
    path("message-rules/", MessageRulesApi.as_view(), name="api_message_rules"),
    path("message-rules/switch/", SwitchMessageApi.as_view(), name="api_message_switch"),
    path("message-texts/", MessageTextsApi.as_view(), name="api_message_texts"),
    path("message-texts/look/", LookAtMessageApi.as_view(), name="api_message_look"),
    path("message-texts/write/", SaveMessageTextApi.as_view(), name="api_message_text_write"),
    path("calendars/", CalendarsApi.as_view(), name="api_calendars"),
    path("calendars/<int:pk>/", CalendarApi.as_view(), name="api_calendar"),
    path("calendars/<int:pk>/close/", RevokeCalendarApi.as_view(), name="api_calendar_close"),
    path("vans/<int:pk>/outside-calendars/", OutsideCalendarsApi.as_view(), name="api_outside_calendars"),
    path("outside-calendars/<int:pk>/", OutsideCalendarApi.as_view(), name="api_outside_calendar"),
    path("outside-calendars/<int:pk>/busy/", OutsideBusyApi.as_view(), name="api_outside_busy"),
    path("outside-calendars/<int:pk>/read/", ReadOutsideCalendarApi.as_view(), name="api_outside_read"),
    path("watches/", WatchesApi.as_view(), name="api_watches"),
    path("watches/<int:pk>/", WatchApi.as_view(), name="api_watch"),
    path("watches/<int:pk>/well/", WatchWellApi.as_view(), name="api_watch_well"),
    path("watch-rules/", WatchRulesApi.as_view(), name="api_watch_rules"),
    path("watch-rules/try/", TryWatchApi.as_view(), name="api_watch_try"),
    path("watch-contacts/", WatchContactsApi.as_view(), name="api_watch_contacts"),
    path("watch-contacts/<int:pk>/", WatchContactApi.as_view(), name="api_watch_contact"),
    path("visits/<int:pk>/crush/papers/", CrushPapersApi.as_view(), name="api_crush_papers"),
    path("visits/<int:pk>/crush/writings/", CrushWritingsApi.as_view(), name="crush_writings"),
    path("visits/<int:pk>/crush/photos/<uuid:uid>/", CrushPhotoApi.as_view(), name="crush_photo"),
    path("visits/<int:pk>/heard/", HeardApi.as_view(), name="visit_heard"),
]
