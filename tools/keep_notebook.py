"""Write the notebook that later versions must still open: tests/notebook/kept/NAME.sqlite3 and the folder in it.

    python tools/keep_notebook.py NAME

Run once when a version is given out; what is there already is never written again.
"""

import datetime
import os
import sys
import tempfile
from pathlib import Path

KEPT = Path(__file__).parent.parent / "tests/notebook/kept"
NOW = datetime.datetime(2026, 10, 10, 9, tzinfo=datetime.UTC)


def main() -> int:
    """Make a small notebook with changes, one taken back, and keep it with its folder."""
    target = KEPT / f"{sys.argv[1]}.sqlite3"
    if target.exists():
        print(f"{target.name} is kept already; nothing was changed.")
        return 2
    with tempfile.TemporaryDirectory() as folder:
        os.environ |= {"STEMWARD_DATA": folder, "DJANGO_SETTINGS_MODULE": "stemward.web.settings"}
        import django

        django.setup()
        from django.core.management import call_command

        from stemward.gate import demo
        from stemward.gate.out import folder_zip
        from stemward.gate.pieces import Parts, join, split
        from stemward.notebook import store
        from stemward.notebook.changes import Asked, Edit, begin, change, undo
        from stemward.notebook.copies import copy_to

        call_command("migrate", verbosity=0)
        whole = split(demo.texts())
        begin(Asked("kept-1", "kept", "owner", "begin"), Parts(whole.pieces, whole.stems[:40], whole.entries), NOW)
        meadow = store.piece_of("kept", "patch", "meadow")
        change(Asked("kept-2", "kept", "owner", "put", {"what": "Wet meadow"},
                     [Edit("patch", "meadow", {**meadow, "name": "Wet meadow"})]), NOW)  # fmt: skip
        change(Asked("kept-3", "kept", "owner", "take stems", {"count": 1}, taken=[whole.stems[0][0]]), NOW)
        undo("kept-4", "kept", "owner", NOW)
        copy_to(Path(folder) / "notebook.sqlite3", target)
        (KEPT / f"{sys.argv[1]}.zip").write_bytes(folder_zip(join(store.parts_of("kept"))))
    print(f"{target.name}: {target.stat().st_size:,} bytes")
    return 0


if __name__ == "__main__":
    sys.exit(main())
