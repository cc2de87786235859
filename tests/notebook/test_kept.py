"""Notebooks and folders of earlier versions are opened by this one."""

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from stemward.gate.out import folder_unzip

KEPT = Path(__file__).parent / "kept"
LOOK = """
import json, django
django.setup()
from django.core.management import call_command
call_command("migrate", verbosity=0)
from notebook.some import NOW
from stemward.gate.pieces import join
from stemward.notebook import store, worked
from stemward.notebook.changes import redo, stacks, undo
texts = join(store.parts_of("kept"))
done, undone = stacks("kept", "owner")
redo("later", "kept", "owner", NOW)
fewer = len(worked.known("kept").land.stems)
undo("later still", "kept", "owner", NOW)
print(json.dumps({"texts": texts, "done": [c.id for c in done], "undone": [c.id for c in undone], "fewer": fewer,
                  "again": join(store.parts_of("kept")) == texts}))
"""


@pytest.mark.parametrize("name", sorted(path.stem for path in KEPT.glob("*.sqlite3")))
def test_a_notebook_of_an_earlier_version_opens(name, tmp_path):
    """Brought up to this version's tables it holds the same land, and its undo goes on where it was."""
    shutil.copy(KEPT / f"{name}.sqlite3", tmp_path / "notebook.sqlite3")
    tests = str(Path(__file__).parents[1])
    env = {**os.environ, "STEMWARD_DATA": str(tmp_path), "DJANGO_SETTINGS_MODULE": "stemward.web.settings"}
    env |= {"PYTHONPATH": os.pathsep.join([tests, *sys.path])}
    env.pop("DATABASE_URL", None)
    done = subprocess.run([sys.executable, "-c", LOOK], env=env, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    found = json.loads(done.stdout)
    assert found["texts"] == folder_unzip((KEPT / f"{name}.zip").read_bytes())
    assert (found["done"], found["undone"]) == (["kept-2"], ["kept-3"])
    assert found["fewer"] == 39
    assert found["again"]
