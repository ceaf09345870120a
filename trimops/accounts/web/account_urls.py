"""Before the sign-in library's own addresses: those of it that are shut here, and those that ask for more than it does.

An e-mail address is proven by an invitation and stays; whoever could change it at a phone left open could have a new
password sent to their own. The rest are ways in that nobody set up.
"""

from django.http import Http404, HttpRequest, HttpResponse
from django.urls import path, re_path

from trimops.accounts.web.device_page import DevicesPage
from trimops.accounts.web.password_pages import ChangePasswordPage, NewPasswordPage


def shut(request: HttpRequest, **words: str) -> HttpResponse:
    raise Http404


urlpatterns = [
    path("email/", shut),
    path("confirm-email/", shut),
    re_path(r"^confirm-email/(?P<key>[-:\w]+)/$", shut),
    path("login/code/confirm/", shut),
    path("password/change/", ChangePasswordPage.as_view()),
    re_path(r"^password/reset/key/(?P<uidb36>[0-9A-Za-z]+)-(?P<key>.+)/$", NewPasswordPage.as_view()),
    path("devices/", DevicesPage.as_view()),
]
