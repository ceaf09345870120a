from django.urls import path

from visits.web.messages.message_pages import MessagePage, MessagesPage

urlpatterns = [
    path("", MessagesPage.as_view(), name="messages"),
    path("<str:kind>/", MessagePage.as_view(), name="message"),
]
