"""Addresses of invoices, drafts and of what is to be billed."""

from django.urls import path

from invoicing.api import credits, draft_lines, drafts, files, invoices, links, mails, ready, settling

INVOICES = [
    path("invoices/", invoices.InvoicesApi.as_view(), name="api_invoices"),
    path("invoices/<int:pk>/", invoices.InvoiceApi.as_view(), name="api_invoice"),
    path("invoices/<int:pk>/invoice.pdf", files.PaperFile.as_view(), name="api_invoice_pdf"),
    path("invoices/<int:pk>/cii.xml", files.CiiFile.as_view(), name="api_invoice_cii"),
    path("invoices/<int:pk>/ubl.xml", files.UblFile.as_view(), name="api_invoice_ubl"),
    path("invoices/<int:pk>/send/", mails.SendInvoiceApi.as_view(), name="api_invoice_send"),
    path("invoices/<int:pk>/links/", links.LinksApi.as_view(), name="api_invoice_links"),
    path("invoice-links/<int:pk>/close/", links.LinkClosedApi.as_view(), name="api_invoice_link_close"),
    path("money-mails/", mails.MailsApi.as_view(), name="api_money_mails"),
    path("money-mails/<int:pk>/", mails.MailApi.as_view(), name="api_money_mail"),
    path("invoices/<int:pk>/credit-left/", credits.CreditLeftApi.as_view(), name="api_invoice_credit_left"),
    path("invoices/<int:pk>/credit/", credits.CreditApi.as_view(), name="api_invoice_credit"),
    path("invoices/<int:pk>/write-off/", settling.WriteOffApi.as_view(), name="api_invoice_write_off"),
    path("invoices/<int:pk>/set-off/", settling.SetOffApi.as_view(), name="api_invoice_set_off"),
    path("invoices/<int:pk>/pay-back/", settling.CreditPaidBackApi.as_view(), name="api_invoice_pay_back"),
]
DRAFTS = [
    path("drafts/", drafts.DraftsApi.as_view(), name="api_drafts"),
    path("drafts/draft-ready/", ready.DraftReadyApi.as_view(), name="api_draft_ready"),
    path("drafts/issue/", drafts.IssueRunApi.as_view(), name="api_issue_run"),
    path("drafts/<int:pk>/", drafts.DraftApi.as_view(), name="api_draft"),
    path("drafts/<int:pk>/anew/", drafts.DraftAnewApi.as_view(), name="api_draft_anew"),
    path("drafts/<int:pk>/issue/", drafts.IssueApi.as_view(), name="api_draft_issue"),
    path("drafts/<int:pk>/lines/", draft_lines.DraftLinesApi.as_view(), name="api_draft_lines"),
    path("drafts/<int:pk>/amounts/", draft_lines.DraftAmountsApi.as_view(), name="api_draft_amounts"),
    path("draft-lines/<int:pk>/", draft_lines.DraftLineApi.as_view(), name="api_draft_line"),
    path("draft-lines/<int:pk>/strike/", draft_lines.LineStruckApi.as_view(), name="api_draft_line_strike"),
    path(
        "draft-amounts/<int:pk>/drop/", draft_lines.AmountTakenOffApi.as_view(), name="api_draft_amount_drop"
    ),
]
WORK = [
    path("ready-to-bill/", ready.ReadyApi.as_view(), name="api_ready_to_bill"),
    path("visits/<int:pk>/draft-invoice/", ready.DraftVisitApi.as_view(), name="api_visit_draft_invoice"),
    path(
        "visits/<int:pk>/leave-unbilled/", ready.LeaveUnbilledApi.as_view(), name="api_visit_leave_unbilled"
    ),
    path("visits/<int:pk>/bill-after-all/", ready.BillAfterAllApi.as_view(), name="api_visit_bill_after_all"),
    path("visits/<int:pk>/late-work/", ready.LateWorkApi.as_view(), name="api_visit_late_work"),
    path("farms/<int:pk>/draft-month/", ready.DraftMonthApi.as_view(), name="api_farm_draft_month"),
]
