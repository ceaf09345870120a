"""Every setting, read from the environment once. The table in DEVELOPERS.md lists them all."""

import os
from pathlib import Path

from trimops.settings import signing_in
from trimops.settings.database import database_from
from trimops.settings.secret_key import read_or_make_secret_key
from trimops.settings.watching import logging_from

BASE_DIR = Path(__file__).resolve().parent.parent.parent
DATA_DIR = Path(os.environ.get("TRIMOPS_DATA_DIR", str(BASE_DIR / ".data")))
REDIS_URL = os.environ.get("REDIS_URL", "")

SECRET_KEY = read_or_make_secret_key(DATA_DIR, os.environ.get("TRIMOPS_SECRET_KEY"))
DEBUG = os.environ.get("TRIMOPS_DEBUG", "0") == "1"
ALLOWED_HOSTS = os.environ.get("TRIMOPS_ALLOWED_HOSTS", "localhost,127.0.0.1,[::1]").split(",")
CSRF_TRUSTED_ORIGINS = [origin for origin in os.environ.get("TRIMOPS_ORIGINS", "").split(",") if origin]
IS_HTTPS = os.environ.get("TRIMOPS_HTTPS", "0") == "1"
# How many proxies stand before the program: so many entries of X-Forwarded-For are believed, from the end.
PROXIES = int(os.environ.get("TRIMOPS_PROXIES", "0"))

# Safety copies; a key seals them. Beside the data they save from a slip, not from a lost disk.
BACKUP_DIR = Path(os.environ.get("TRIMOPS_BACKUP_DIR", str(DATA_DIR / "backups")))
BACKUP_KEY = os.environ.get("TRIMOPS_BACKUP_KEY", "")

DATABASES = {"default": database_from(os.environ.get("DATABASE_URL"), DATA_DIR)}
DEFAULT_AUTO_FIELD = "django.db.models.BigAutoField"

INSTALLED_APPS = [
    "trimops",
    "trimops.tenancy",
    "trimops.accounts",
    "trimops.errands",
    "trimops.audit",
    "trimops.outbox",
    "trimops.web",
    "trimops.api",
    "farms",
    "visits",
    "invoicing",
    "trimops.portal",
    "allauth",
    "allauth.account",
    "allauth.mfa",
    "allauth.usersessions",
    "knox",
    "rest_framework",
    "drf_spectacular",
    "drf_spectacular_sidecar",
    "whitenoise.runserver_nostatic",
    "django.contrib.auth",
    "django.contrib.contenttypes",
    "django.contrib.sessions",
    "django.contrib.messages",
    "django.contrib.staticfiles",
    "django.forms",
]

MIDDLEWARE = [
    "trimops.web.probes.ProbeMiddleware",
    "trimops.web.access_line.AccessLineMiddleware",
    "trimops.web.headers.HeadersMiddleware",
    "trimops.web.plain_http.PlainHttpMiddleware",
    "django.middleware.security.SecurityMiddleware",
    "whitenoise.middleware.WhiteNoiseMiddleware",
    "csp.middleware.CSPMiddleware",
    "django.contrib.sessions.middleware.SessionMiddleware",
    "django.middleware.common.CommonMiddleware",
    "django.middleware.csrf.CsrfViewMiddleware",
    "django.contrib.auth.middleware.AuthenticationMiddleware",
    "django.contrib.messages.middleware.MessageMiddleware",
    "django.middleware.clickjacking.XFrameOptionsMiddleware",
    "trimops.web.body_limit.BodyLimitMiddleware",
    "allauth.account.middleware.AccountMiddleware",
    "trimops.accounts.web.session_life.SessionLifeMiddleware",
    "trimops.web.guesses.GuessMiddleware",
    "farms.web.seat_middleware.SeatMiddleware",
    "trimops.web.doing_middleware.DoingMiddleware",
    "visits.web.lone_watch.heard_middleware.HeardMiddleware",
    "trimops.web.refusals.RefusalMiddleware",
]

ROOT_URLCONF = "trimops.urls"
WSGI_APPLICATION = "trimops.wsgi.application"
ASGI_APPLICATION = "trimops.asgi.application"

TEMPLATES = [
    {
        "BACKEND": "django.template.backends.django.DjangoTemplates",
        # Our own look first, so that it also dresses the sign-in library's pages.
        "DIRS": [BASE_DIR / "trimops" / "web" / "templates"],
        "APP_DIRS": True,
        "OPTIONS": {
            "context_processors": [
                "django.template.context_processors.request",
                "django.contrib.auth.context_processors.auth",
                "django.contrib.messages.context_processors.messages",
                "trimops.web.page_frame.page_frame",
                "visits.web.lone_watch.watch_notices.watch_notices",
            ],
        },
    },
]

FORM_RENDERER = "trimops.web.form_look.FormLook"

LANGUAGE_CODE = "en-gb"
TIME_ZONE = "UTC"
USE_TZ = True
USE_I18N = True

STATIC_URL = "static/"
STATIC_ROOT = BASE_DIR / "static-collected"
# 1: from what collectstatic gathered, compressed, kept by browsers for good; else from where the files lie.
IS_COLLECTED = os.environ.get("TRIMOPS_COLLECTED", "0") == "1"
STORAGES = {
    "default": {"BACKEND": "django.core.files.storage.FileSystemStorage"},
    "staticfiles": {
        "BACKEND": "trimops.web.release_files.ReleaseFiles"
        if IS_COLLECTED
        else "django.contrib.staticfiles.storage.StaticFilesStorage"
    },
}
WHITENOISE_USE_FINDERS = True
WHITENOISE_ALLOW_ALL_ORIGINS = False
WHITENOISE_IMMUTABLE_FILE_TEST = r"^/static/r-[0-9a-f]{12}/"

AUTH_USER_MODEL = "accounts.User"
AUTHENTICATION_BACKENDS = [
    "allauth.account.auth_backends.AuthenticationBackend",
    "sesame.backends.ModelBackend",
]
# A link signs in once; of what kind it is decides how much shorter than this it lives.
SESAME_ONE_TIME = True
# Bytes of the signature that a guesser has to hit: 128 bits, as all our other addresses have or more.
SESAME_SIGNATURE_SIZE = 16
SESAME_MAX_AGE = 14 * 24 * 3600
# A list of stolen passwords on this machine: lines of SHA-1, in order.
STOLEN_PASSWORDS = os.environ.get("TRIMOPS_STOLEN_PASSWORDS", "")
AUTH_PASSWORD_VALIDATORS = signing_in.password_rules(STOLEN_PASSWORDS)
LOGIN_URL = "account_login"
LOGIN_REDIRECT_URL = "home"
ACCOUNT_ADAPTER = "trimops.accounts.sign_in_adapter.SignInAdapter"
ACCOUNT_LOGIN_METHODS = {"email"}
ACCOUNT_SIGNUP_FIELDS = ["email*", "password1*", "password2*"]
ACCOUNT_USER_MODEL_USERNAME_FIELD = None
# An account begins with an invitation sent to the address, so the address is proven already.
ACCOUNT_EMAIL_VERIFICATION = "none"
ACCOUNT_RATE_LIMITS = signing_in.RATE_LIMITS
ALLAUTH_TRUSTED_PROXY_COUNT = PROXIES
# The second step: a code of an app, a passkey (which signs in by itself as well), codes on paper if both are lost.
MFA_ADAPTER = "trimops.accounts.sign_in_adapter.SecondStepAdapter"
MFA_FORMS = signing_in.FORMS
MFA_SUPPORTED_TYPES = ["totp", "webauthn", "recovery_codes"]
MFA_PASSKEY_LOGIN_ENABLED = True
MFA_TOTP_ISSUER = "trimops"
MFA_RECOVERY_CODES_SHOW_ONCE = True
MFA_ALLOW_UNVERIFIED_EMAIL = True
# Browsers give passkeys to https and to localhost alone; the library is told the same of the latter.
MFA_WEBAUTHN_ALLOW_INSECURE_ORIGIN = not IS_HTTPS
# Who has not been heard of for so long, or signed in so long ago, signs in again. Long, because a trimmer signs in with
# cold hands in a yard without a signal: the phone keeps the day in any case, and sends it after the next sign-in.
SESSION_IDLE_DAYS = int(os.environ.get("TRIMOPS_SESSION_IDLE_DAYS", "14"))
SESSION_DAYS = int(os.environ.get("TRIMOPS_SESSION_DAYS", "60"))
SESSION_COOKIE_AGE = SESSION_DAYS * 86_400
ACCOUNT_LOGOUT_REDIRECT_URL = "account_login"
ACCOUNT_SESSION_REMEMBER = True
INVITATION_DAYS = 14
# Where the site is reached, for links in mail that no page sends.
SITE_ADDRESS = os.environ.get("TRIMOPS_SITE", "http://localhost:8000").rstrip("/")

EMAIL_HOST = os.environ.get("TRIMOPS_EMAIL_HOST", "")
EMAIL_PORT = int(os.environ.get("TRIMOPS_EMAIL_PORT", "587"))
EMAIL_HOST_USER = os.environ.get("TRIMOPS_EMAIL_USER", "")
EMAIL_HOST_PASSWORD = os.environ.get("TRIMOPS_EMAIL_PASSWORD", "")
EMAIL_USE_TLS = os.environ.get("TRIMOPS_EMAIL_TLS", "1") == "1"
DEFAULT_FROM_EMAIL = os.environ.get("TRIMOPS_EMAIL_FROM", "trimops@localhost")
# Without a mail host nothing is lost and nothing leaves: each message becomes a file beside the data.
EMAIL_BACKEND = (
    "django.core.mail.backends.smtp.EmailBackend"
    if EMAIL_HOST
    else "django.core.mail.backends.filebased.EmailBackend"
)
EMAIL_FILE_PATH = str(DATA_DIR / "mail")

_REDIS = {
    "BACKEND": "django.core.cache.backends.redis.RedisCache",
    "LOCATION": REDIS_URL,
    # Neither a page nor the timetable waits for ever for one that does not answer.
    "OPTIONS": {"socket_timeout": 3, "socket_connect_timeout": 3},
}
_COUNTS = {
    "BACKEND": "trimops.web.shared_cache.SharedCache",
    "LOCATION": str(DATA_DIR / "counts.sqlite3"),
    # Limits are counted in it: by 300, which is usual, whoever comes from 300 places has all counts forgotten.
    "OPTIONS": {"MAX_ENTRIES": 100_000},
}
_IN_MEMORY = {"BACKEND": "django.core.cache.backends.locmem.LocMemCache"}
CACHES = {
    # Limits, used codes: all processes count together.
    "default": _REDIS if REDIS_URL else _COUNTS,
    # What was worked out and can be worked out again: each process for itself is good enough.
    "worked_out": _REDIS if REDIS_URL else _IN_MEMORY,
}

# Jobs that take long run in a process of their own; tests run them in place.
JOBS_RUN_APART = True
PLAN_SECONDS = float(os.environ.get("TRIMOPS_PLAN_SECONDS", "10"))

# Drives by road: a server with the OSRM interface, or an extract prepared for the library on this machine.
ROADS_URL = os.environ.get("TRIMOPS_ROADS_URL", "")
ROADS_FILE = os.environ.get("TRIMOPS_ROADS_FILE", "")

# Where people's addresses may lead although it is inside this house: "host:port", comma between.
INNER_ADDRESSES = [
    place.strip().lower()
    for place in os.environ.get("TRIMOPS_INNER_ADDRESSES", "").split(",")
    if place.strip()
]
# The only machines outside that people's addresses may lead to, with all below them; empty: any of the open internet.
OUTSIDE_NAMES = [
    name.strip().lower().strip(".")
    for name in os.environ.get("TRIMOPS_OUTSIDE_NAMES", "").split(",")
    if name.strip(" .")
]
# By which way text messages go: "file", "mail:gateway.example", or nothing: then none goes.
SMS = os.environ.get("TRIMOPS_SMS", "")

CONTENT_SECURITY_POLICY = {
    "DIRECTIVES": {
        "default-src": ["'self'"],
        # blob: a photo taken at the crush, shown before it was sent
        "img-src": ["'self'", "data:", "blob:"],
        "object-src": ["'none'"],
        "base-uri": ["'none'"],
        "form-action": ["'self'"],
        "frame-ancestors": ["'none'"],
    }
}
SESSION_COOKIE_SECURE = IS_HTTPS
CSRF_COOKIE_SECURE = IS_HTTPS
SESSION_COOKIE_HTTPONLY = True
SESSION_COOKIE_SAMESITE = CSRF_COOKIE_SAMESITE = "Lax"
# Over HTTPS a browser takes these names from this very host alone, for all of it. The crush page reads the second.
SESSION_COOKIE_NAME = "__Host-sessionid" if IS_HTTPS else "sessionid"
CSRF_COOKIE_NAME = "__Host-csrftoken" if IS_HTTPS else "csrftoken"
SECURE_SSL_REDIRECT = IS_HTTPS
SECURE_HSTS_SECONDS = 31_536_000 if IS_HTTPS else 0
SECURE_HSTS_INCLUDE_SUBDOMAINS = IS_HTTPS
# Only who means it, for browsers keep such a list for years: a name that is on it is never reached by HTTP again.
SECURE_HSTS_PRELOAD = os.environ.get("TRIMOPS_HSTS_PRELOAD", "0") == "1"
SILENCED_SYSTEM_CHECKS = ["security.W021"]  # because: it wants that preload always
SECURE_CROSS_ORIGIN_OPENER_POLICY = "same-origin"
SECURE_CONTENT_TYPE_NOSNIFF = True
SECURE_PROXY_SSL_HEADER = ("HTTP_X_FORWARDED_PROTO", "https") if IS_HTTPS else None
SECURE_REFERRER_POLICY = "same-origin"
X_FRAME_OPTIONS = "DENY"
CSRF_FAILURE_VIEW = "trimops.web.problem_pages.csrf_failure"
DATA_UPLOAD_MAX_MEMORY_SIZE = 6 * 1024 * 1024

# Calls of the API in a minute, for a token or a person, and for an address of which nobody is known; 0: no limit.
API_RATE = int(os.environ.get("TRIMOPS_API_RATE", "1200"))
API_STRANGER_RATE = int(os.environ.get("TRIMOPS_API_STRANGER_RATE", "120"))
# Pages of one person in a minute; and week plans in an hour, five times as many tables taken out, ten times as many
# papers drawn, by page and API together; 0: no limit.
PAGE_RATE = int(os.environ.get("TRIMOPS_PAGE_RATE", "600"))
COSTLY_RATE = int(os.environ.get("TRIMOPS_COSTLY_RATE", "60"))
# Addresses that are their own key: so many that lead nowhere, from one machine in an hour, then it waits.
WRONG_LINKS_RATE = int(os.environ.get("TRIMOPS_WRONG_LINKS_RATE", "60"))
KNOX_TOKEN_MODEL = "accounts.ApiToken"
# The prefix lets scanners for leaked secrets find ours.
REST_KNOX = {"TOKEN_PREFIX": "trimops_", "AUTH_HEADER_PREFIX": "Bearer"}
REST_FRAMEWORK = {
    "DEFAULT_PERMISSION_CLASSES": ["rest_framework.permissions.IsAuthenticated"],
    # The first one says how a stranger comes in (401); a person at a page comes by the session, with its CSRF token.
    "DEFAULT_AUTHENTICATION_CLASSES": [
        "trimops.accounts.web.token_sign_in.TokenSignIn",
        "rest_framework.authentication.SessionAuthentication",
    ],
    "DEFAULT_RENDERER_CLASSES": ["rest_framework.renderers.JSONRenderer"],
    "EXCEPTION_HANDLER": "trimops.web.refusals.answer_refusal",
    "DEFAULT_SCHEMA_CLASS": "drf_spectacular.openapi.AutoSchema",
}
SPECTACULAR_SETTINGS = {
    "TITLE": "trimops",
    "DESCRIPTION": "The week of a cattle foot trimmer: farms, visits, feet, kit and money. Its manners, the same at "
    "every address, stand at `/api/`, what each refusal means at `/api/v1/problems/`. Decimals and money are texts, "
    "times have their offset. Money is in the currency of the business where none is named.",
    "VERSION": "1",
    "OAS_VERSION": "3.1.0",
    "SCHEMA_PATH_PREFIX": "/api/v1",
    "COMPONENT_SPLIT_REQUEST": True,
    "POSTPROCESSING_HOOKS": ["trimops.api.finishing.finish_description"],
    "SORT_OPERATION_PARAMETERS": False,
    "ENABLE_DJANGO_DEPLOY_CHECK": False,
    "SWAGGER_UI_DIST": "SIDECAR",
    "SWAGGER_UI_FAVICON_HREF": "SIDECAR",
}

LOG_FORMAT = os.environ.get("TRIMOPS_LOG_FORMAT", "plain")
LOGGING = logging_from(LOG_FORMAT, os.environ.get("TRIMOPS_LOG_LEVEL", "WARNING"))
# /metrics answers whoever bears this; nobody where it is empty. The folder is where several processes count together.
METRICS_TOKEN = os.environ.get("TRIMOPS_METRICS_TOKEN", "")
METRICS_FOLDER = os.environ.get("PROMETHEUS_MULTIPROC_DIR", "")
# Where faults are told to, over an open protocol; nobody is told where it is empty.
ERRORS_DSN = os.environ.get("TRIMOPS_ERRORS_DSN", "")
# Ready to work means: so much room beside the data, and a timetable that was kept not longer ago than this.
DISK_FREE_MB = int(os.environ.get("TRIMOPS_DISK_FREE_MB", "200"))
TIMETABLE_MINUTES = int(os.environ.get("TRIMOPS_TIMETABLE_MINUTES", "5"))
