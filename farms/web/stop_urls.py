"""What the link at the end of a message opens, without signing in."""

from django.urls import path

from farms.web.stop_pages import StopMessagesPage

urlpatterns = [path("<str:secret>/", StopMessagesPage.as_view(), name="stop_messages")]
