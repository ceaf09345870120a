from django.urls import path

from trimops.web.outgoing_pages import (
    OutgoingAgainPage,
    OutgoingLeavePage,
    OutgoingListPage,
    OutgoingNowPage,
    OutgoingPage,
)

urlpatterns = [
    path("", OutgoingListPage.as_view(), name="outgoing_list"),
    path("now/", OutgoingNowPage.as_view(), name="outgoing_now"),
    path("<int:pk>/", OutgoingPage.as_view(), name="outgoing"),
    path("<int:pk>/again/", OutgoingAgainPage.as_view(), name="outgoing_again"),
    path("<int:pk>/leave/", OutgoingLeavePage.as_view(), name="outgoing_leave"),
]
