"""The least that Django does for a row: one view that asks the database once. Settings and addresses of it in one."""

import os

import dj_database_url
from django.db import connection
from django.http import HttpRequest, JsonResponse
from django.urls import path

DATABASES = {
    "default": dj_database_url.parse(os.environ["DATABASE_URL"], conn_max_age=60, conn_health_checks=True)
}
SECRET_KEY = "bare"
ROOT_URLCONF = "tests.bench.load.bare_site"
ALLOWED_HOSTS = ["*"]
USE_TZ = True
# What gunicorn's configuration of ours asks of its settings.
DATA_DIR = os.environ["TRIMOPS_DATA_DIR"]


def one_row(request: HttpRequest, pk: int) -> JsonResponse:
    with connection.cursor() as cursor:
        cursor.execute("SELECT name FROM accounts_business WHERE id = %s", [pk])
        (name,) = cursor.fetchone()
    return JsonResponse({"name": name})


urlpatterns = [path("business/<int:pk>/", one_row)]
