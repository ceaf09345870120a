from django.urls import path

from invoicing.web.book_pages import BookFile, BookPartPage, BooksFile, BooksPage
from invoicing.web.lock_pages import PeriodLockPage
from invoicing.web.mileage_pages import JourneyNewPage, JourneyPage, MileagePage
from invoicing.web.rate_pages import MileageRatesPage, ReferenceRatesPage
from invoicing.web.reminder_pages import ReminderPage, ReminderPaper, RemindersApprove, RemindersPage

urlpatterns = [
    path("reminders/", RemindersPage.as_view(), name="reminders"),
    path("reminders/approve/", RemindersApprove.as_view(), name="reminders_approve"),
    path("reminders/<int:pk>/", ReminderPage.as_view(), name="reminder"),
    path("reminders/<int:pk>/reminder.pdf", ReminderPaper.as_view(), name="reminder_paper"),
    path("reference-rates/", ReferenceRatesPage.as_view(), name="reference_rates"),
    path("books/", BooksPage.as_view(), name="books"),
    path("books/all.xlsx", BooksFile.as_view(), name="books_file"),
    path("books/<slug:part>/", BookPartPage.as_view(), name="book_part"),
    path("books/<slug:part>.csv", BookFile.as_view(), {"form": "csv"}, name="book_csv"),
    path("books/<slug:part>.xlsx", BookFile.as_view(), {"form": "xlsx"}, name="book_xlsx"),
    path("mileage/", MileagePage.as_view(), name="mileage"),
    path("mileage/new/", JourneyNewPage.as_view(), name="journey_new"),
    path("mileage/<int:pk>/", JourneyPage.as_view(), name="journey"),
    path("mileage-rates/", MileageRatesPage.as_view(), name="mileage_rates"),
    path("period-lock/", PeriodLockPage.as_view(), name="period_lock"),
]
