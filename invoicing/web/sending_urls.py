from django.urls import path

from invoicing.web.sending_pages import (
    InvoiceLinkClosePage,
    InvoiceLinksPage,
    InvoiceSendPage,
    SendingAgainPage,
    SendingLeavePage,
    SendingPage,
    SendingsNowPage,
    SendingsPage,
)

urlpatterns = [
    path("<int:pk>/send/", InvoiceSendPage.as_view(), name="invoice_send"),
    path("<int:pk>/links/", InvoiceLinksPage.as_view(), name="invoice_links"),
    path("links/<int:pk>/close/", InvoiceLinkClosePage.as_view(), name="invoice_link_close"),
    path("mail/", SendingsPage.as_view(), name="sendings"),
    path("mail/now/", SendingsNowPage.as_view(), name="sendings_now"),
    path("mail/<int:pk>/", SendingPage.as_view(), name="sending"),
    path("mail/<int:pk>/again/", SendingAgainPage.as_view(), name="sending_again"),
    path("mail/<int:pk>/leave/", SendingLeavePage.as_view(), name="sending_leave"),
]
