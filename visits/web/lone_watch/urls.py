from django.urls import path

from visits.web.lone_watch.call_page import WatchCallPage
from visits.web.lone_watch.watch_pages import (
    LoneWatchPage,
    WatchContactPage,
    WatchPage,
    WatchTryPage,
    WatchWellPage,
)

urlpatterns = [
    path("", WatchPage.as_view(), name="watch"),
    path("try/", WatchTryPage.as_view(), name="watch_try"),
    path("list/new/", WatchContactPage.as_view(), name="watch_contact_new"),
    path("list/<int:pk>/", WatchContactPage.as_view(), name="watch_contact"),
    path("by/<str:secret>/", WatchCallPage.as_view(), name="watch_by_link"),
    path("<int:pk>/", LoneWatchPage.as_view(), name="lone_watch"),
    path("<int:pk>/well/", WatchWellPage.as_view(), name="watch_well"),
]
