"""Addresses of the books and of the mileage log."""

from django.urls import path

from invoicing.api import books, journeys, period_lock

BOOKS = [
    path("books/", books.BooksApi.as_view(), name="api_books"),
    path("books/all.xlsx", books.BooksSpreadsheet.as_view(), name="api_books_xlsx"),
    path("books/<slug:part>/", books.BookApi.as_view(), name="api_book"),
    path("books/<slug:part>.csv", books.BookCsv.as_view(), name="api_book_csv"),
    path("books/<slug:part>.xlsx", books.BookSpreadsheet.as_view(), name="api_book_xlsx"),
    path("journeys/", journeys.JourneysApi.as_view(), name="api_journeys"),
    path("journeys/take-in/", journeys.TakeInApi.as_view(), name="api_journeys_take_in"),
    path("journeys/<int:pk>/", journeys.JourneyApi.as_view(), name="api_journey"),
    path("period-lock/", period_lock.PeriodLockApi.as_view(), name="api_period_lock"),
]
