"""The notebook's small tract for the rows that phones bring; a browser; someone who came in by the link."""

from notebook.conftest import _forgetful, small
from web.conftest import client, hollow

__all__ = ["_forgetful", "client", "hollow", "small"]
