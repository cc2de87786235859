"""Settings of the tests: a folder of their own, and a database that DATABASE_URL may name."""

import atexit
import os
import shutil
import tempfile

# A forked child of tools/mutate_checks.py ends without its leave; it needs no notebook, so it makes no folder.
if "STEMWARD_BROKEN" in os.environ:
    os.environ["STEMWARD_DATA"] = os.path.join(tempfile.gettempdir(), "stemward-no-notebook")  # noqa: PTH118
else:
    os.environ["STEMWARD_DATA"] = tempfile.mkdtemp(prefix="stemward-tests-")
    atexit.register(shutil.rmtree, os.environ["STEMWARD_DATA"], ignore_errors=True)
os.environ["STEMWARD_TODAY"] = "2026-10-10"

from stemward.web.settings import *  # noqa: F403
