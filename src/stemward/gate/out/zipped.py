"""A tract folder as one zip, out and in. What comes in may be hostile: names, sizes and kinds are looked at first."""

import io
import stat
import zipfile
from collections.abc import Mapping
from pathlib import PurePosixPath

from stemward.gate.files import MOST_BYTES, OPTIONAL, REQUIRED, SHELF

MOST_MEMBERS = 400
MOST_UNPACKED = 256 * 1024 * 1024
"""Bytes in all: engineering guess, as the limits of single files are."""
SOME_DAY = (2020, 1, 1, 0, 0, 0)
"""The date of every member, so that the same folder gives the same bytes."""


class NotAFolder(Exception):
    """A zip that is no tract folder, or not a harmless one; its text is a sentence for the person."""


def folder_zip(texts: Mapping[str, str], top: str = "") -> bytes:
    """The texts of a tract folder as a zip, in a folder `top` if one is named. Same texts, same bytes."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for name in sorted(texts):
            info = zipfile.ZipInfo(f"{top}/{name}" if top else name, SOME_DAY)
            info.compress_type = zipfile.ZIP_DEFLATED
            info.external_attr = 0o644 << 16
            archive.writestr(info, texts[name].encode())
    return out.getvalue()


def folder_unzip(raw: bytes) -> dict[str, str]:
    """The texts of a zipped tract folder, by relative name. Raises NotAFolder with a sentence.

    One folder around everything is taken off. Files that belong to no tract are left out.
    """
    try:
        with zipfile.ZipFile(io.BytesIO(raw)) as archive:
            members = [info for info in archive.infolist() if not info.is_dir()]
            _look(members)
            names = _inside([info.filename for info in members])
            return {
                name: _text(archive, info, name) for info, name in zip(members, names, strict=True) if _belongs(name)
            }
    except (zipfile.BadZipFile, zipfile.LargeZipFile, EOFError, NotImplementedError, OSError, ValueError) as error:
        if isinstance(error, UnicodeDecodeError):
            raise
        raise NotAFolder("This is not a zip file that can be read; it may be damaged or cut off.") from None


def _look(members: list[zipfile.ZipInfo]) -> None:
    if not members:
        raise NotAFolder("The zip file is empty.")
    if len(members) > MOST_MEMBERS:
        raise NotAFolder(f"The zip file holds {len(members)} files; the most that are read is {MOST_MEMBERS}.")
    if sum(info.file_size for info in members) > MOST_UNPACKED:
        raise NotAFolder("What is in the zip file is larger than the 256 MB that are read.")
    seen: set[str] = set()
    for info in members:
        parts = PurePosixPath(info.filename).parts
        if info.filename.startswith("/") or "\\" in info.filename or ".." in parts or ":" in parts[0]:
            raise NotAFolder("The zip file names a place outside of its folder, and was not opened.")
        if info.flag_bits & 0x1:
            raise NotAFolder("The zip file is locked with a password. Make one without.")
        if stat.S_ISLNK(info.external_attr >> 16):
            raise NotAFolder("The zip file holds a link in the place of a file, and was not opened.")
        if info.filename in seen:
            raise NotAFolder("The zip file holds the same name twice, and was not opened.")
        seen.add(info.filename)


def _inside(names: list[str]) -> list[str]:
    """Names without the one folder around all of them, if there is one."""
    tops = {name.partition("/")[0] for name in names}
    if len(tops) == 1 and all("/" in name for name in names):
        return [name.partition("/")[2] for name in names]
    return names


def _belongs(name: str) -> bool:
    parts = PurePosixPath(name).parts
    if name in (*REQUIRED, *OPTIONAL):
        return True
    return len(parts) == 2 and parts[0] == SHELF and name.endswith(".toml") and not parts[1].startswith(".")


def _text(archive: zipfile.ZipFile, info: zipfile.ZipInfo, name: str) -> str:
    most = MOST_BYTES[PurePosixPath(name).suffix]
    with archive.open(info) as file:
        raw = file.read(most + 1)
    if len(raw) > most:
        raise NotAFolder(f"{name} is larger than the {most // 1_000_000} MB that are read.")
    try:
        return raw.decode("utf-8-sig").replace("\r\n", "\n")
    except UnicodeDecodeError:
        raise NotAFolder(f"{name} is not UTF-8 text.") from None
