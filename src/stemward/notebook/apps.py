"""The notebook as a Django app."""

from typing import Any

from django.apps import AppConfig
from django.db.models.signals import post_migrate


class NotebookConfig(AppConfig):
    """Rows of the notebook; guards append-only tables again after every migration."""

    name = "stemward.notebook"
    label = "notebook"
    default_auto_field = "django.db.models.BigAutoField"

    def ready(self) -> None:
        """Triggers are made after each migration: SQLite drops them when a table is rebuilt."""
        post_migrate.connect(_guard, sender=self)


def _guard(using: str, **_: Any) -> None:
    from django.db import connections

    from stemward.notebook.guards import make_guards

    make_guards(connections[using])
