"""The example tract, Quarry Hollow: invented throughout, and marked so."""

from importlib import resources

PLACE = "quarry-hollow"


def texts() -> dict[str, str]:
    """The files of the example as relative name to text, sorted by name."""
    root = resources.files(__package__) / PLACE
    found = {entry.name: entry.read_text("utf-8") for entry in root.iterdir() if entry.is_file()}
    for entry in (root / "shelf").iterdir():
        found[f"shelf/{entry.name}"] = entry.read_text("utf-8")
    return dict(sorted(found.items()))
