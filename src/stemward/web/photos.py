"""Photos that people send with a look, kept in the notebook."""

import datetime

from stemward.field.receive import MOST_PHOTO_BYTES, put_photo
from stemward.gate.folder import Unreadable
from stemward.gate.foreign.picture import small_photo
from stemward.notebook.changes import Refused
from stemward.say.problems import problem_lines


def keep_photo(tract_id: str, raw: bytes, name: str, now: datetime.datetime) -> str:
    """Keep a photo made small; its digest. Raises Refused for what is no picture."""
    try:
        small = small_photo(raw, name, MOST_PHOTO_BYTES)
    except Unreadable as wrong:
        raise Refused(*problem_lines(wrong.problems)) from None
    return put_photo(tract_id, small, now)
