"""The look page; included only while developing."""

from django.urls import path

from trimops.web.look_sample import look_page

urlpatterns = [path("", look_page, name="look")]
