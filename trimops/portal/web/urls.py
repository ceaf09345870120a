from django.urls import path

from trimops.portal.web.portal_pages import PortalAskPage, PortalHomePage

urlpatterns = [
    path("", PortalHomePage.as_view(), name="portal_home"),
    path("ask/", PortalAskPage.as_view(), name="portal_ask"),
]
