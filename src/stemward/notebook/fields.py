"""Columns of the notebook that Django does not have."""

import json
from typing import Any

from django.db import models


class AsWritten(models.TextField):
    """JSON that comes out as it went in, keys in their order: PostgreSQL's own type sorts them, and a folder that is
    given out has to be the one that was brought."""

    def from_db_value(self, value: str | None, *_: Any) -> Any:
        """The value behind a text."""
        return None if value is None else json.loads(value)

    def get_prep_value(self, value: Any) -> str | None:
        """The text of a value."""
        return None if value is None else json.dumps(value, ensure_ascii=False)

    def to_python(self, value: Any) -> Any:
        """As it is: only values are assigned."""
        return value
