from django.urls import path

from trimops.web.webhook_pages import CloseWebhookPage, TryWebhookPage, WebhooksPage

urlpatterns = [
    path("", WebhooksPage.as_view(), name="webhooks"),
    path("<int:pk>/try/", TryWebhookPage.as_view(), name="webhook_try"),
    path("<int:pk>/close/", CloseWebhookPage.as_view(), name="webhook_close"),
]
