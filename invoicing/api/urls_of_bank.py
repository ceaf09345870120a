"""Addresses of payments, accounts, the bank and reminders."""

from django.urls import path

from invoicing.api import accounts, bank_entries, bank_files, payments, reminders, settling

PAYMENTS = [
    path("payments/", payments.PaymentsApi.as_view(), name="api_payments"),
    path("payments/<int:pk>/", payments.PaymentApi.as_view(), name="api_payment"),
    path("payments/<int:pk>/set-against/", payments.SetAgainstApi.as_view(), name="api_payment_set_against"),
    path("payments/<int:pk>/take-back/", payments.TakeBackApi.as_view(), name="api_payment_take_back"),
    path("payments/<int:pk>/pay-back/", payments.PayBackApi.as_view(), name="api_payment_pay_back"),
    path("allocations/<int:pk>/undo/", settling.AllocationUndoneApi.as_view(), name="api_allocation_undo"),
    path("owed/", accounts.OwedApi.as_view(), name="api_owed"),
    path("farms/<int:pk>/account/", accounts.FarmAccountApi.as_view(), name="api_farm_account"),
    path("farms/<int:pk>/statement.pdf", accounts.StatementFile.as_view(), name="api_farm_statement"),
    path(
        "farms/<int:pk>/send-statement/", accounts.SendStatementApi.as_view(), name="api_farm_send_statement"
    ),
    path("reminders/", reminders.RemindersApi.as_view(), name="api_reminders"),
    path("reminders/propose/", reminders.ProposeApi.as_view(), name="api_reminders_propose"),
    path("reminders/<int:pk>/", reminders.ReminderApi.as_view(), name="api_reminder"),
    path("reminders/<int:pk>/reminder.pdf", reminders.ReminderFile.as_view(), name="api_reminder_pdf"),
    path("reminders/<int:pk>/approve/", reminders.ApproveApi.as_view(), name="api_reminder_approve"),
    path("reminders/<int:pk>/drop/", reminders.DropApi.as_view(), name="api_reminder_drop"),
]
BANK = [
    path("bank-files/", bank_files.BankFilesApi.as_view(), name="api_bank_files"),
    path("bank-files/whole/", bank_files.WholeBankFileApi.as_view(), name="api_bank_file_whole"),
    path("bank-files/<int:pk>/", bank_files.BankFileApi.as_view(), name="api_bank_file"),
    path("bank-files/<int:pk>/columns/", bank_files.BankColumnsApi.as_view(), name="api_bank_file_columns"),
    path("bank-files/<int:pk>/read/", bank_files.BankReadApi.as_view(), name="api_bank_file_read"),
    path("bank-mappings/", bank_files.BankMappingsApi.as_view(), name="api_bank_mappings"),
    path("bank-entries/", bank_entries.BankEntriesApi.as_view(), name="api_bank_entries"),
    path("bank-entries/accept/", bank_entries.AcceptApi.as_view(), name="api_bank_accept"),
    path("bank-entries/<int:pk>/", bank_entries.BankEntryApi.as_view(), name="api_bank_entry"),
    path("bank-entries/<int:pk>/match/", bank_entries.MatchApi.as_view(), name="api_bank_entry_match"),
    path(
        "bank-entries/<int:pk>/paid-back/",
        bank_entries.EntryPaidBackApi.as_view(),
        name="api_bank_entry_paid_back",
    ),
    path(
        "bank-entries/<int:pk>/set-aside/",
        bank_entries.SetAsideApi.as_view(),
        name="api_bank_entry_set_aside",
    ),
    path(
        "bank-entries/<int:pk>/bring-back/",
        bank_entries.BringBackApi.as_view(),
        name="api_bank_entry_bring_back",
    ),
    path("bank-proposals/", bank_entries.ProposalsApi.as_view(), name="api_bank_proposals"),
]
