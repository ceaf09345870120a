"""What the link in a message opens, without signing in."""

from django.urls import path

from visits.web.messages.list_by_link import ListByLink

urlpatterns = [path("<str:secret>/", ListByLink.as_view(), name="list_by_link")]
