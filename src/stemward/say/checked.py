"""A check in plain words: what it asks, whom it protects, what it can say, and who says so."""

import inspect
import re
from typing import Any

from stemward.checks import ALL
from stemward.say import en


def check_words(check_id: str) -> dict[str, Any]:
    """What stands behind one check. KeyError for an id that is none."""
    check = {one.id: one for one in ALL}[check_id]
    return {
        "id": check.id,
        "asks": (inspect.getdoc(inspect.getmodule(check.run)) or "").split("\n\n")[0],
        "protects": check.protects,
        "needs": ", ".join(check.needs),
        "says": [
            (_open(text), _open(do)) for message, (text, do) in en.findings.MESSAGES.items()
            if message.startswith(f"{check.id}.")
        ],
        "sources": list(check.sources),
    }  # fmt: skip


def _open(text: str) -> str:
    """A sentence with an ellipsis where a plan's own words stand."""
    return re.sub(r"\{[^}]*\}", "…", text)
