from django.urls import path

from visits.api.crush_photo import CrushPhotoApi
from visits.api.crush_writings import CrushWritingsApi
from visits.api.heard import HeardApi

urlpatterns = [
    path("visits/<int:pk>/crush/writings/", CrushWritingsApi.as_view(), name="crush_writings"),
    path("visits/<int:pk>/crush/photos/<uuid:uid>/", CrushPhotoApi.as_view(), name="crush_photo"),
    path("visits/<int:pk>/heard/", HeardApi.as_view(), name="visit_heard"),
]
