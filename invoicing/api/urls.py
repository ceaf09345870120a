"""Addresses of the money under /api/v1/, a list for each part."""

from invoicing.api.urls_of_bank import BANK, PAYMENTS
from invoicing.api.urls_of_books import BOOKS
from invoicing.api.urls_of_invoices import DRAFTS, INVOICES, WORK
from invoicing.api.urls_of_prices import PRICES

urlpatterns = [*INVOICES, *DRAFTS, *WORK, *PAYMENTS, *BANK, *PRICES, *BOOKS]
