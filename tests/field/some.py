"""Rows as a phone sends them."""

from notebook.some import NOW

__all__ = ["NOW", "mark", "note"]


def mark(key, what, at="2026-10-10T04:10:00", device="phone 1", **rows):
    """A mark: so many plants by stem."""
    return {"id": key, "kind": "marked", "at": at, "offset": -300, "by": "owner", "device": device,
            "body": {"what": what, "rows": rows, "patch": "fence"}}  # fmt: skip


def note(key, text="", **body):
    """A note."""
    return {"id": key, "kind": "noted", "at": "2026-10-10T04:10:00", "offset": -300, "by": "owner", "device": "phone 1",
            "body": {"what": "note", "text": text, **body}}  # fmt: skip
