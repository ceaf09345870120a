from django.urls import path

from invoicing.web.credit_pages import CreditPage
from invoicing.web.draft_pages import (
    HandLinePage,
    HeadPage,
    LinePage,
    UndoPage,
    WholeDropPage,
    WholePage,
)
from invoicing.web.invoice_pages import (
    DraftsPage,
    InvoiceListPage,
    InvoicePage,
    InvoicePaper,
    IssuedPage,
)
from invoicing.web.ready_pages import (
    BillAfterAllPage,
    DraftInvoicePage,
    IssueAllPage,
    LateWorkPage,
    LeaveUnbilledPage,
    ReadyPage,
    VisitBillPage,
)

urlpatterns = [
    path("", InvoiceListPage.as_view(), name="invoice_list"),
    path("ready/", ReadyPage.as_view(), name="bill_ready"),
    path("drafts/", DraftsPage.as_view(), name="invoice_drafts"),
    path("drafts/issue/", IssueAllPage.as_view(), name="invoice_issue_all"),
    path("issued/", IssuedPage.as_view(), name="invoice_issued"),
    path("draft/<int:visit_pk>/", DraftInvoicePage.as_view(), name="invoice_draft"),
    path("visits/<int:visit_pk>/", VisitBillPage.as_view(), name="visit_bill"),
    path("visits/<int:visit_pk>/leave/", LeaveUnbilledPage.as_view(), name="bill_leave"),
    path("visits/<int:visit_pk>/after-all/", BillAfterAllPage.as_view(), name="bill_after_all"),
    path("visits/<int:visit_pk>/changed/", LateWorkPage.as_view(), name="bill_late"),
    path("<int:pk>/", InvoicePage.as_view(), name="invoice"),
    path("<int:pk>/invoice.pdf", InvoicePaper.as_view(), name="invoice_paper"),
    path("<int:pk>/lines/new/", HandLinePage.as_view(), name="invoice_line_new"),
    path("<int:pk>/discount/", WholePage.as_view(), name="invoice_whole"),
    path("<int:pk>/head/", HeadPage.as_view(), name="invoice_head"),
    path("<int:pk>/undo/", UndoPage.as_view(), name="invoice_undo"),
    path("<int:pk>/credit/", CreditPage.as_view(), name="invoice_credit"),
    path("lines/<int:pk>/", LinePage.as_view(), name="invoice_line"),
    path("discounts/<int:pk>/drop/", WholeDropPage.as_view(), name="invoice_whole_drop"),
]
