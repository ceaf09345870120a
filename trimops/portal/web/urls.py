from django.urls import path

from trimops.portal.web.ask_pages import PortalAskPage, PortalHoldPage, PortalOffersPage, PortalWishPage
from trimops.portal.web.calendar_pages import PortalCalendarClosePage, PortalCalendarPage
from trimops.portal.web.come_in_pages import ComeInByLinkPage, ComeInPage
from trimops.portal.web.cow_pages import PortalCowPage, PortalCowsPage
from trimops.portal.web.draft_pages import PortalDraftPage, PortalScoresPage
from trimops.portal.web.held_pages import PortalHeldPage, PortalLetGoPage, PortalTakePage
from trimops.portal.web.herd_pages import PortalHerdPage
from trimops.portal.web.money_pages import PortalInvoicePaper, PortalInvoiceXml, PortalMoneyPage
from trimops.portal.web.portal_pages import PortalFarmsPage, PortalHomePage
from trimops.portal.web.report_pages import PortalReportPage, PortalReportsPage

urlpatterns = [
    path("", PortalHomePage.as_view(), name="portal_home"),
    path("farms/", PortalFarmsPage.as_view(), name="portal_farms"),
    path("come-in/", ComeInPage.as_view(), name="come_in"),
    path("come-in/<str:token>/", ComeInByLinkPage.as_view(), name="come_in_by_link"),
    path("ask/", PortalAskPage.as_view(), name="portal_ask"),
    path("ask/hours/", PortalOffersPage.as_view(), name="portal_offers"),
    path("ask/hold/", PortalHoldPage.as_view(), name="portal_hold"),
    path("ask/wish/", PortalWishPage.as_view(), name="portal_wish"),
    path("held/<int:pk>/", PortalHeldPage.as_view(), name="portal_held"),
    path("held/<int:pk>/take/", PortalTakePage.as_view(), name="portal_take"),
    path("held/<int:pk>/let-go/", PortalLetGoPage.as_view(), name="portal_let_go"),
    path("visits/<int:pk>/draft/", PortalDraftPage.as_view(), name="portal_draft"),
    path("reports/", PortalReportsPage.as_view(), name="portal_reports"),
    path("reports/<int:pk>/", PortalReportPage.as_view(), name="portal_report"),
    path("scores/", PortalScoresPage.as_view(), name="portal_scores"),
    path("cows/", PortalCowsPage.as_view(), name="portal_cows"),
    path("cows/<int:pk>/", PortalCowPage.as_view(), name="portal_cow"),
    path("feet/", PortalHerdPage.as_view(), name="portal_herd"),
    path("invoices/", PortalMoneyPage.as_view(), name="portal_money"),
    path("invoices/<int:pk>.pdf", PortalInvoicePaper.as_view(), name="portal_invoice_paper"),
    path("invoices/<int:pk>-<str:form>.xml", PortalInvoiceXml.as_view(), name="portal_invoice_xml"),
    path("calendar/", PortalCalendarPage.as_view(), name="portal_calendar"),
    path("calendar/<int:pk>/close/", PortalCalendarClosePage.as_view(), name="portal_calendar_close"),
]
