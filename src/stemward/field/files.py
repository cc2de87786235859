"""The phone's page as files: served by the notebook, or written into a folder for any host with https."""

import hashlib
import json
from functools import cache
from pathlib import Path

PAGE = Path(__file__).with_name("page")
TYPES = {
    ".html": "text/html; charset=utf-8", ".js": "text/javascript; charset=utf-8", ".css": "text/css; charset=utf-8",
    ".svg": "image/svg+xml", ".woff2": "font/woff2", ".webmanifest": "application/manifest+json",
}  # fmt: skip
WORKER = "sw.js"
FIRST = "index.html"


@cache
def names() -> tuple[str, ...]:
    """Every file of the page."""
    return tuple(sorted(path.name for path in PAGE.iterdir() if path.suffix in TYPES))


@cache
def version() -> str:
    """sha256 over names and bytes, so that a changed file is a new version and an unchanged page is none."""
    digest = hashlib.sha256()
    for name in names():
        digest.update(f"{name}\n".encode() + (PAGE / name).read_bytes())
    return digest.hexdigest()[:16]


@cache
def content(name: str) -> bytes:
    """A file as it is served; the service worker with its version and the list of files. KeyError for no such file."""
    if name not in names():
        raise KeyError(name)
    raw = (PAGE / name).read_bytes()
    if name != WORKER:
        return raw
    files = ["./", *(one for one in names() if one not in (WORKER, FIRST))]
    text = raw.decode().replace('"as-written"', json.dumps(version())).replace('["./"]', json.dumps(files))
    return text.encode()


def write_page(folder: Path) -> list[str]:
    """Write the page into a folder, made if missing; the names of its files. OSError where that cannot be."""
    folder.mkdir(parents=True, exist_ok=True)
    for name in names():
        (folder / name).write_bytes(content(name))
    return list(names())
