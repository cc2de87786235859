"""An icon on the desktop that starts the notebook, for each kind of computer a text file of its own."""

import os
import shlex
import stat
import subprocess
import sys
from collections.abc import Sequence
from dataclasses import dataclass
from importlib import resources
from pathlib import Path

NAME = "Stemward"


@dataclass(frozen=True)
class IconFile:
    """What is put on the desktop: name, text, whether it has to be marked as a program."""

    name: str
    text: str
    program: bool


def icon_file(platform: str, words: Sequence[str], picture: str) -> IconFile:
    """The file for a platform as `sys.platform` names it.

    Args:
        words: program and arguments that start the notebook.
        picture: path of a picture, where the platform shows one.
    """
    if platform == "win32":
        return IconFile(f"{NAME}.cmd", f'@start "" {subprocess.list2cmdline(words)}\r\n', False)
    if platform == "darwin":
        return IconFile(f"{NAME}.command", f"#!/bin/sh\nexec {shlex.join(words)}\n", True)
    # The keys and the quoting are those of the Desktop Entry Specification (freedesktop.org), version 1.5.
    command = " ".join(_quoted(word) for word in words)
    lines = ("[Desktop Entry]", "Type=Application", "Version=1.5", f"Name={NAME}", f"Exec={command}",
             f"Icon={picture}", "Terminal=false")  # fmt: skip
    return IconFile(f"{NAME}.desktop", "\n".join(lines) + "\n", True)


def _quoted(word: str) -> str:
    """One argument of an Exec line: in quotes, with the four special characters and the percent sign escaped."""
    for sign in ("\\", '"', "`", "$"):
        word = word.replace(sign, "\\" + sign)
    return '"' + word.replace("\\", "\\\\").replace("%", "%%") + '"'


def desktop_folder(home: Path) -> Path | None:
    """The person's desktop: what the system names, else a folder called Desktop; None where there is none."""
    named = home / ".config/user-dirs.dirs"
    if named.is_file():
        for line in named.read_text(errors="replace").splitlines():
            key, _, value = line.partition("=")
            if key.strip() == "XDG_DESKTOP_DIR":
                found = Path(value.strip().strip('"').replace("$HOME", str(home)))
                if found.is_dir():
                    return found
    usual = home / "Desktop"
    return usual if usual.is_dir() else None


def put_icon(data: Path, home: Path, platform: str = sys.platform) -> Path | None:
    """Write the icon for the notebook in `data`; its path, or None where this computer has no desktop folder."""
    desktop = desktop_folder(home)
    if desktop is None:
        return None
    picture = data / "icon.svg"
    picture.write_bytes(resources.files("stemward.web").joinpath("static/web/icon.svg").read_bytes())
    made = icon_file(platform, (sys.executable, "-m", "stemward.cli", "serve", "--data", str(data)), str(picture))
    path = desktop / made.name
    path.write_text(made.text, newline="")
    if made.program and os.name == "posix":
        path.chmod(path.stat().st_mode | stat.S_IXUSR)
    return path
