from django.urls import path

from invoicing.web.invoice_pages import DraftInvoicePage, InvoiceListPage, InvoicePage, InvoicePaper

urlpatterns = [
    path("", InvoiceListPage.as_view(), name="invoice_list"),
    path("<int:pk>/", InvoicePage.as_view(), name="invoice"),
    path("<int:pk>/invoice.pdf", InvoicePaper.as_view(), name="invoice_paper"),
    path("draft/<int:visit_pk>/", DraftInvoicePage.as_view(), name="invoice_draft"),
]
