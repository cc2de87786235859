"""The icon on the desktop."""

import configparser
import os
import re
import subprocess
import sys

import pytest

from stemward.web.icon import desktop_folder, icon_file, put_icon


def test_a_desktop_entry_names_the_program_and_its_words():
    """Quotes, spaces, percent and dollar signs in a path arrive as they are."""
    words = ["/opt/py thon/bin/py", "-m", "stemward.cli", "serve", "--data", '/home/a/100 % "wood"$\\x']
    made = icon_file("linux", words, "/p.svg")
    read = configparser.RawConfigParser()
    read.optionxform = str
    read.read_string(made.text)
    entry = read["Desktop Entry"]
    # Undo the two levels of the Desktop Entry Specification: string escapes, then quoting with %% for a percent sign.
    line = entry["Exec"].replace("\\\\", "\\").replace("%%", "%")
    assert [re.sub(r"\\(.)", r"\1", word) for word in re.findall(r'"((?:[^"\\]|\\.)*)"', line)] == words
    assert (entry["Type"], entry["Name"], entry["Terminal"], made.program) == ("Application", "Stemward", "false", True)


def test_a_shell_file_runs_the_words(tmp_path):
    """The file for a Mac is a shell script that hands over its words whole."""
    out = tmp_path / "it's here.txt"
    words = [sys.executable, "-c", "import sys; open(sys.argv[1], 'w').write('ran')", str(out)]
    script = tmp_path / "x.command"
    script.write_text(icon_file("darwin", words, "").text)
    subprocess.run(["/bin/sh", str(script)], check=True, timeout=20)
    assert out.read_text() == "ran"


def test_a_batch_file_starts_the_words():
    """The file for Windows starts the program with its words quoted (looked at, not run)."""
    made = icon_file("win32", ["C:\\Program Files\\py.exe", "-m", "stemward.cli"], "")
    assert made.text == '@start "" "C:\\Program Files\\py.exe" -m stemward.cli\r\n'


@pytest.mark.parametrize("named", [True, False])
def test_the_desktop_is_where_the_system_says(tmp_path, named):
    """The folder that the system names wins; else one called Desktop."""
    (tmp_path / "Desktop").mkdir()
    if named:
        (tmp_path / "Escritorio").mkdir()
        (tmp_path / ".config").mkdir()
        (tmp_path / ".config/user-dirs.dirs").write_text('XDG_DESKTOP_DIR="$HOME/Escritorio"\n')
    assert desktop_folder(tmp_path) == tmp_path / ("Escritorio" if named else "Desktop")


def test_the_icon_is_put_and_without_a_desktop_nothing_is(tmp_path):
    """It is marked as a program, and its picture is kept in the notebook's folder."""
    assert put_icon(tmp_path, tmp_path, "linux") is None
    assert list(tmp_path.iterdir()) == []
    (tmp_path / "Desktop").mkdir()
    put = put_icon(tmp_path, tmp_path, "linux")
    assert os.access(put, os.X_OK)
    assert (tmp_path / "icon.svg").read_text().startswith("<svg")
    assert str(tmp_path) in put.read_text()
