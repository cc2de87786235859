"""The notebook's small tract for the rows that phones bring."""

from notebook.conftest import _forgetful, hollow, small

__all__ = ["_forgetful", "hollow", "small"]
