from invoicing.models.bank import BankEntry, BankFile, BankMapping, BankStatement
from invoicing.models.books import Journey, MileageRate, PeriodLock
from invoicing.models.invoice import Invoice, InvoiceKind, InvoicePapers, InvoiceState, NumberSeries
from invoicing.models.invoice_line import BilledWork, DocumentAmount, DraftEdit, InvoiceLine, LateWork
from invoicing.models.payment import Allocation, Payment
from invoicing.models.prices import Agreement, Price, PriceList, TaxRate, TravelBand
from invoicing.models.reminder import ReferenceRate, Reminder
from invoicing.models.sending import InvoiceLink, Sending
from invoicing.models.terms import FarmTerms, MoneyRules

__all__ = [
    "Agreement",
    "Allocation",
    "BankEntry",
    "BankFile",
    "BankMapping",
    "BankStatement",
    "BilledWork",
    "DocumentAmount",
    "DraftEdit",
    "FarmTerms",
    "Invoice",
    "InvoiceKind",
    "InvoiceLine",
    "InvoiceLink",
    "InvoicePapers",
    "InvoiceState",
    "Journey",
    "LateWork",
    "MileageRate",
    "MoneyRules",
    "NumberSeries",
    "Payment",
    "PeriodLock",
    "Price",
    "PriceList",
    "ReferenceRate",
    "Reminder",
    "Sending",
    "TaxRate",
    "TravelBand",
]
