from django.urls import path

from invoicing.web.sending_pages import (
    InvoiceLinkClosePage,
    InvoiceLinksPage,
    InvoiceSendPage,
    SendingPage,
    SendingsPage,
    SentPaperPage,
)

urlpatterns = [
    path("<int:pk>/send/", InvoiceSendPage.as_view(), name="invoice_send"),
    path("<int:pk>/links/", InvoiceLinksPage.as_view(), name="invoice_links"),
    path("links/<int:pk>/close/", InvoiceLinkClosePage.as_view(), name="invoice_link_close"),
    path("mail/", SendingsPage.as_view(), name="sendings"),
    path("mail/<int:pk>/", SendingPage.as_view(), name="sending"),
    path("mail/<int:pk>/paper/", SentPaperPage.as_view(), name="sent_paper"),
]
