"""Django settings. Everything that differs from one computer to another comes from the environment.

STEMWARD_DATA: folder of the notebook. DATABASE_URL: a PostgreSQL database in place of SQLite in that folder.
STEMWARD_PROFILE: "loopback" (this computer alone, the default) or "shared" (behind https, several people).
"""

import os
import secrets
from pathlib import Path
from typing import Any
from urllib.parse import unquote, urlsplit

from stemward.web.place import data_folder


def secret_key(folder: Path) -> str:
    """The key that signs form tokens: made once, readable by its owner alone."""
    path = folder / "secret"
    if not path.exists():
        folder.mkdir(parents=True, exist_ok=True)
        handle = os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
        with os.fdopen(handle, "w") as out:
            out.write(secrets.token_urlsafe(64))
    return path.read_text()


def database(url: str, folder: Path) -> dict[str, Any]:
    """Settings of the database that a URL names, else of SQLite in the folder."""
    if not url:
        return {
            "ENGINE": "django.db.backends.sqlite3",
            "NAME": folder / "notebook.sqlite3",
            "OPTIONS": {
                # A write lock from the start: an upgrade within a transaction would fail at once.
                "transaction_mode": "IMMEDIATE",
                "timeout": 20,
                "init_command": "PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL;",
            },
        }
    parts = urlsplit(url)
    if parts.scheme not in ("postgres", "postgresql"):
        raise ValueError("DATABASE_URL is read for PostgreSQL only, for example postgresql://name@host/notebook.")
    return {
        "ENGINE": "django.db.backends.postgresql",
        "NAME": unquote(parts.path.lstrip("/")),
        "USER": unquote(parts.username or ""),
        "PASSWORD": unquote(parts.password or ""),
        "HOST": parts.hostname or "",
        "PORT": str(parts.port or ""),
    }


PROFILE = os.environ.get("STEMWARD_PROFILE", "loopback")
DATA = data_folder()
SECRET_KEY = os.environ.get("STEMWARD_SECRET") or secret_key(DATA)
DEBUG = False
ALLOWED_HOSTS = os.environ.get("STEMWARD_HOSTS", "127.0.0.1,localhost").split(",")

INSTALLED_APPS = ["stemward.notebook.apps.NotebookConfig", "stemward.web.apps.WebConfig"]
MIDDLEWARE = [
    "django.middleware.security.SecurityMiddleware",
    "whitenoise.middleware.WhiteNoiseMiddleware",
    "stemward.web.middleware.policy",
    "stemward.web.middleware.only_the_owner",
    "django.middleware.common.CommonMiddleware",
    "django.middleware.csrf.CsrfViewMiddleware",
    "django.middleware.clickjacking.XFrameOptionsMiddleware",
    "stemward.web.middleware.plain_errors",
]
ROOT_URLCONF = "stemward.web.urls"
WSGI_APPLICATION = "stemward.web.wsgi.application"
TEMPLATES = [
    {
        "BACKEND": "django.template.backends.django.DjangoTemplates",
        "APP_DIRS": True,
        "OPTIONS": {"context_processors": ["django.template.context_processors.request", "stemward.web.frame.frame"]},
    }
]
DATABASES = {"default": database(os.environ.get("DATABASE_URL", ""), DATA)}
DEFAULT_AUTO_FIELD = "django.db.models.BigAutoField"
USE_TZ = True
TIME_ZONE = "UTC"
LANGUAGE_CODE = "en-us"
USE_I18N = False
STATIC_URL = "/static/"
STATIC_ROOT = None
WHITENOISE_USE_FINDERS = True
WHITENOISE_AUTOREFRESH = False

# Largest upload that is read; 200,000 stems take about 15 MB. The rest is room for GeoPackages.
DATA_UPLOAD_MAX_MEMORY_SIZE = 64 * 1024 * 1024
FILE_UPLOAD_MAX_MEMORY_SIZE = 64 * 1024 * 1024
DATA_UPLOAD_MAX_NUMBER_FIELDS = 5000
FILE_UPLOAD_HANDLERS = ["django.core.files.uploadhandler.MemoryFileUploadHandler"]

CSRF_COOKIE_NAME = "stemward_form"
CSRF_COOKIE_SAMESITE = "Strict"
CSRF_COOKIE_HTTPONLY = True
CSRF_FAILURE_VIEW = "stemward.web.views.trouble.form_expired"
SECURE_CONTENT_TYPE_NOSNIFF = True
SECURE_REFERRER_POLICY = "same-origin"
X_FRAME_OPTIONS = "DENY"

if PROFILE == "shared":
    SECURE_SSL_REDIRECT = True
    SECURE_HSTS_SECONDS = 31_536_000
    SECURE_HSTS_INCLUDE_SUBDOMAINS = True
    SECURE_HSTS_PRELOAD = True
    CSRF_COOKIE_SECURE = True
    SECURE_PROXY_SSL_HEADER = ("HTTP_X_FORWARDED_PROTO", "https")
else:
    # A server that only this computer reaches has no certificate; these four ask for https.
    SILENCED_SYSTEM_CHECKS = [
        "security.W004",  # no HSTS: a browser told to insist on https would not open 127.0.0.1 again
        "security.W008",  # no redirect to https: nothing answers there
        "security.W016",  # the form cookie travels over http, within this computer only
        "security.W012",  # so does the cookie that lets its owner in
    ]

LOGGING = {
    "version": 1,
    "disable_existing_loggers": False,
    "handlers": {"stderr": {"class": "logging.StreamHandler"}},
    "root": {"handlers": ["stderr"], "level": "WARNING"},
    # Wrong hosts and forms that ran out are answered with a sentence; they are no news for the log.
    "loggers": {"django.security": {"level": "CRITICAL"}, "django.request": {"level": "ERROR"}},
}
