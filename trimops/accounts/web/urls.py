from django.urls import path

from trimops.accounts.web.business_page import BusinessPage
from trimops.accounts.web.device_page import DeviceSignOutPage
from trimops.accounts.web.own_ways_page import OwnWaysPage
from trimops.accounts.web.part_pages import InvitationAgainPage, PartPage
from trimops.accounts.web.people_pages import EndMembershipPage, InvitationPage, PeoplePage
from trimops.accounts.web.token_pages import (
    OwnProgramRevokePage,
    OwnProgramsPage,
    ProgramsPage,
    RevokeAnyPage,
)

urlpatterns = [
    path("", PeoplePage.as_view(), name="people"),
    path("business/", BusinessPage.as_view(), name="business"),
    path("me/", OwnWaysPage.as_view(), name="own_ways"),
    path("me/programs/", OwnProgramsPage.as_view(), name="own_programs"),
    path("me/programs/revoke/", OwnProgramRevokePage.as_view(), name="own_program_revoke"),
    path("me/devices/sign-out/", DeviceSignOutPage.as_view(), name="device_sign_out"),
    path("programs/", ProgramsPage.as_view(), name="programs"),
    path("programs/<int:pk>/revoke/", RevokeAnyPage.as_view(), name="program_revoke"),
    path("<int:pk>/part/", PartPage.as_view(), name="part"),
    path("<int:pk>/again/", InvitationAgainPage.as_view(), name="invitation_again"),
    path("<int:pk>/leave/", EndMembershipPage.as_view(), name="membership_end"),
    path("come-in/<str:token>/", InvitationPage.as_view(), name="invitation"),
]
