from django.urls import path

from trimops.web.stuck_pages import LeavePage, StuckPage, TryAgainPage

urlpatterns = [
    path("", StuckPage.as_view(), name="stuck"),
    path("<int:pk>/again/", TryAgainPage.as_view(), name="stuck_again"),
    path("<int:pk>/leave/", LeavePage.as_view(), name="stuck_leave"),
]
