"""Where the notebook is kept."""

import os
from pathlib import Path


def data_folder() -> Path:
    """The notebook's folder: STEMWARD_DATA, or Stemward in the person's documents. Nothing is made."""
    named = os.environ.get("STEMWARD_DATA")
    if named:
        return Path(named).expanduser()
    documents = Path.home() / "Documents"
    return (documents if documents.is_dir() else Path.home()) / "Stemward"
