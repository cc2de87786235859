"""The files of a tract folder: which there are, and their bytes. Nothing outside the folder is read."""

import hashlib
import os
import stat
from pathlib import Path

from stemward.gate.problems import Problems
from stemward.gate.text import clean, near

REQUIRED = ("tract.toml", "stems.csv")
OPTIONAL = ("patches.geojson", "spared.geojson", "choices.toml", "records.jsonl", "plots.csv")
SHELF = "shelf"

MB = 1_000_000
MOST_BYTES = {".csv": 200 * MB, ".toml": 2 * MB, ".geojson": 20 * MB, ".jsonl": 20 * MB}
"""Largest files that are read: engineering guess, several times what the largest tract needs."""

MOST_PRODUCTS = 200


def gather(folder: Path, problems: Problems) -> dict[str, bytes]:
    """The bytes of every file that belongs to a tract folder, by name within it ("shelf/x.toml")."""
    names = _names(folder, "", problems)
    if names is None:
        return {}
    if not names:
        problems.add("folder.empty", "", expected=", ".join(REQUIRED))
        return {}
    _names_amiss(names, problems)
    wanted = [name for name in (*REQUIRED, *OPTIONAL) if name in names]
    if SHELF in names:
        wanted += _shelf(folder, problems)
    home = folder.resolve()
    read = {name: _bytes(folder / name, name, home, problems) for name in wanted}
    return {name: raw for name, raw in read.items() if raw is not None}


def _names(folder: Path, name: str, problems: Problems) -> list[str] | None:
    try:
        return sorted(entry.name for entry in os.scandir(folder))
    except FileNotFoundError:
        problems.add("folder.missing", name)
    except NotADirectoryError:
        problems.add("folder.not_a_folder", name)
    except PermissionError:
        problems.add("folder.no_permission", name)
    except (OSError, ValueError) as error:
        problems.add("folder.cannot_read", name, why=_why(error))
    return None


def _why(error: Exception) -> str:
    return clean(str(getattr(error, "strerror", None) or error))


def _names_amiss(names: list[str], problems: Problems) -> None:
    """Required files that are missing, and names a letter away from a file that would then go unread."""
    known = {*REQUIRED, *OPTIONAL, SHELF}
    others = [name for name in names if name not in known and not name.startswith((".", "~"))]
    for name in REQUIRED:
        if name not in names:
            problems.add("file.missing", name, near=near(name, map(clean, others)), expected=name)
    for other in others:
        meant = [name for name in known if name not in names and _alike(other, name)]
        if meant and meant[0] not in REQUIRED:
            problems.add("file.other_name", clean(other), meant=meant[0], expected=meant[0])


def _alike(name: str, known: str) -> bool:
    """True for other letter case and for an ending that was added or lost, as in spared.geojson.txt."""
    name = name.casefold()
    stem = known.partition(".")[0]
    return name == known or name in (f"{known}.txt", f"{known}.json", f"{stem}.json", stem)


def _shelf(folder: Path, problems: Problems) -> list[str]:
    names = _names(folder / SHELF, SHELF, problems) or []
    wanted = [f"{SHELF}/{name}" for name in names if name.endswith(".toml") and not name.startswith(".")]
    for name in names:
        shown = f"{SHELF}/{clean(name)}"
        if name.casefold().endswith((".toml.txt", ".toml")) and not name.endswith(".toml"):
            problems.add("file.other_name", shown, meant="*.toml", expected="shelf/glyphosate.toml")
        elif not name.endswith(".toml") and not name.startswith((".", "~")) and not name.endswith("~"):
            problems.ask("ask.not_read", shown)
    if len(wanted) > MOST_PRODUCTS:
        problems.add("key.too_many", SHELF, count=len(wanted), most=MOST_PRODUCTS)
        return []
    return wanted


def _bytes(path: Path, name: str, home: Path, problems: Problems) -> bytes | None:
    shown = clean(name)
    most = MOST_BYTES[path.suffix]
    try:
        if not path.resolve().is_relative_to(home):
            problems.add("file.outside", shown)
            return None
        # A pipe or device in the place of a file would keep the reader waiting for ever.
        if not stat.S_ISREG(path.stat().st_mode):
            problems.add("file.not_a_file", shown)
            return None
        with path.open("rb") as file:
            raw = file.read(most + 1)
    except PermissionError:
        problems.add("file.no_permission", shown)
    except (OSError, RuntimeError, ValueError) as error:
        problems.add("file.cannot_read", shown, why=_why(error))
    else:
        if len(raw) <= most:
            return raw
        problems.add("file.too_big", shown, most_mb=most / MB)
    return None


def hash_of(files: dict[str, bytes]) -> str:
    """sha256 over names and bytes in order of names, as hexadecimal digits; each is led by its length."""
    digest = hashlib.sha256()
    for name in sorted(files):
        for part in (os.fsencode(name), files[name]):
            digest.update(len(part).to_bytes(8, "big"))
            digest.update(part)
    return digest.hexdigest()
