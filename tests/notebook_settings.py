"""Settings of the tests: a folder of their own, and a database that DATABASE_URL may name."""

import atexit
import os
import shutil
import tempfile

os.environ["STEMWARD_DATA"] = tempfile.mkdtemp(prefix="stemward-tests-")
os.environ["STEMWARD_TODAY"] = "2026-10-10"
atexit.register(shutil.rmtree, os.environ["STEMWARD_DATA"], ignore_errors=True)

from stemward.web.settings import *  # noqa: F403
