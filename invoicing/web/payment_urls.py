from django.urls import path

from invoicing.web.account_pages import FarmAccountPage, FarmStatement, OverduePage
from invoicing.web.bank_entry_pages import BankEntryPage, BankReadPage, PaidBackButton, SetAsideButton
from invoicing.web.bank_pages import AcceptButton, BankDonePage, BankPage
from invoicing.web.payment_pages import (
    NewPaymentPage,
    PayBackPage,
    PaymentPage,
    PaymentsPage,
    TakeBackPage,
)
from invoicing.web.settle_pages import SetOffButton, SettledPage, UndoPage

urlpatterns = [
    path("overdue/", OverduePage.as_view(), name="money_overdue"),
    path("account/<int:farm_pk>/", FarmAccountPage.as_view(), name="farm_account"),
    path("account/<int:farm_pk>/statement.pdf", FarmStatement.as_view(), name="farm_statement"),
    path("payments/", PaymentsPage.as_view(), name="payments"),
    path("payments/new/", NewPaymentPage.as_view(), name="payment_new"),
    path("payments/<int:pk>/", PaymentPage.as_view(), name="payment"),
    path("payments/<int:pk>/take-back/", TakeBackPage.as_view(), name="payment_take_back"),
    path("payments/<int:pk>/pay-back/", PayBackPage.as_view(), name="payment_pay_back"),
    path("<int:pk>/settled/", SettledPage.as_view(), name="invoice_settled"),
    path("<int:pk>/settled/<int:bill_pk>/", SetOffButton.as_view(), name="invoice_set_off"),
    path("settled/<int:pk>/undo/", UndoPage.as_view(), name="settled_undo"),
    path("bank/", BankPage.as_view(), name="bank"),
    path("bank/accept/", AcceptButton.as_view(), name="bank_accept"),
    path("bank/done/", BankDonePage.as_view(), name="bank_done"),
    path("bank/files/<int:pk>/", BankReadPage.as_view(), name="bank_read"),
    path("bank/<int:pk>/", BankEntryPage.as_view(), name="bank_entry"),
    path("bank/<int:pk>/aside/", SetAsideButton.as_view(), name="bank_aside"),
    path("bank/<int:pk>/paid-back/", PaidBackButton.as_view(), name="bank_paid_back"),
]
