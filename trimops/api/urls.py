from django.urls import path

from trimops.api.changes import ChangesApi
from trimops.api.description import DescriptionFile
from trimops.api.pages import ApiPage, ProblemsPage, TryPage

urlpatterns = [
    path("", ApiPage.as_view(), name="api_page"),
    path("try/", TryPage.as_view(), name="api_try"),
    path("v1/openapi.json", DescriptionFile.as_view(), name="api_description"),
    path("v1/problems/", ProblemsPage.as_view(), name="api_problems"),
    path("v1/changes/", ChangesApi.as_view(), name="api_changes"),
]
