"""The door of a notebook that only this computer's owner may open: a link that works once, then a cookie.

Other people logged in on the same computer can reach its loopback address as well; the link, shown and opened only
for the person who started the notebook, keeps them out.
"""

import hmac
import os
import secrets
import threading

COOKIE = "stemward_key"


class Door:
    """Keys of one run of the server. `key` is what the cookie holds; links are used up when they are opened."""

    def __init__(self) -> None:
        self.key = secrets.token_urlsafe(32)
        self._links: dict[str, str] = {}
        self._lock = threading.Lock()

    def new_link(self, to: str = "/") -> str:
        """A fresh word for a link, good for one opening, that leads to the page `to`."""
        word = secrets.token_urlsafe(24)
        with self._lock:
            self._links[word] = to
        return word

    def open(self, word: str) -> str | None:
        """The page that a link leads to, once for each word given out; then None."""
        with self._lock:
            found = next((link for link in self._links if hmac.compare_digest(link, word)), None)
            return None if found is None else self._links.pop(found)

    def knows(self, key: str) -> bool:
        """True for the key that the cookie holds after an opening."""
        return hmac.compare_digest(self.key.encode(), key.encode())


door = Door()


def who() -> str:
    """Who is working, for the trace: this computer's user, or "owner" where it has no name."""
    return os.environ.get("STEMWARD_WHO") or os.environ.get("USER") or "owner"
