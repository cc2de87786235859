"""Settings of the tests: a folder of their own, and a database that DATABASE_URL may name."""

import os
import tempfile

os.environ["STEMWARD_DATA"] = tempfile.mkdtemp(prefix="stemward-tests-")
os.environ["STEMWARD_TODAY"] = "2026-10-10"

from stemward.web.settings import *  # noqa: F403
