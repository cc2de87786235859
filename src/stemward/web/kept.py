"""What was made a moment ago and is asked for again: words and pages of a plan, by its code."""

import threading
from collections import OrderedDict
from collections.abc import Callable, Hashable
from typing import Any, TypeVar

Made = TypeVar("Made")
MOST = 12
_kept: OrderedDict[Hashable, object] = OrderedDict()
_lock = threading.Lock()


def kept_lately(name: str, key: Hashable, make: Callable[[], Made]) -> Made:
    """What `make` gives, or gave lately under this name and key."""
    whole = (name, key)
    with _lock:
        if whole in _kept:
            _kept.move_to_end(whole)
            return _kept[whole]  # type: ignore[return-value]
    made = make()
    with _lock:
        _kept[whole] = made
        while len(_kept) > MOST:
            _kept.popitem(last=False)
    return made


def lately(name: str, key: Hashable) -> Any:
    """What was kept under this name and key, or None."""
    with _lock:
        return _kept.get((name, key))
