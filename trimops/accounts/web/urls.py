from django.urls import path

from trimops.accounts.web.business_page import BusinessPage
from trimops.accounts.web.own_ways_page import OwnWaysPage
from trimops.accounts.web.people_pages import EndMembershipPage, InvitationPage, PeoplePage

urlpatterns = [
    path("", PeoplePage.as_view(), name="people"),
    path("business/", BusinessPage.as_view(), name="business"),
    path("me/", OwnWaysPage.as_view(), name="own_ways"),
    path("<int:pk>/leave/", EndMembershipPage.as_view(), name="membership_end"),
    path("come-in/<str:token>/", InvitationPage.as_view(), name="invitation"),
]
