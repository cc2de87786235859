"""How far something that takes more than a second has come, for the page that waits for it."""

import threading
from collections import OrderedDict
from collections.abc import Callable
from typing import NamedTuple

MOST = 20
Tell = Callable[[str, int, int], None]


class Far(NamedTuple):
    """What is being done, and how much of how much; of 0: it cannot be counted."""

    words: str
    done: int = 0
    of: int = 0


_now: OrderedDict[str, Far] = OrderedDict()
_lock = threading.Lock()


def teller(token: str) -> Tell:
    """A function that notes how far the work known as `token` has come."""

    def tell(words: str, done: int = 0, of: int = 0) -> None:
        with _lock:
            _now[token] = Far(words, done, of)
            _now.move_to_end(token)
            while len(_now) > MOST:
                _now.popitem(last=False)

    return tell


def far(token: str) -> Far | None:
    """How far that work has come; None where nobody has told yet."""
    with _lock:
        return _now.get(token)
