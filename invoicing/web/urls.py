"""Addresses of the money, a list of them for each part."""

from django.urls import include, path

urlpatterns = [
    path("", include("invoicing.web.invoice_urls")),
    path("", include("invoicing.web.price_urls")),
    path("", include("invoicing.web.sending_urls")),
    path("", include("invoicing.web.book_urls")),
    path("", include("invoicing.web.payment_urls")),
]
