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
        self._links: set[str] = set()
        self._lock = threading.Lock()

    def new_link(self) -> str:
        """A fresh word for a link, good for one opening."""
        word = secrets.token_urlsafe(24)
        with self._lock:
            self._links.add(word)
        return word

    def open(self, word: str) -> bool:
        """True once for each word given out."""
        with self._lock:
            found = next((link for link in self._links if hmac.compare_digest(link, word)), None)
            if found is None:
                return False
            self._links.remove(found)
            return True

    def knows(self, key: str) -> bool:
        """True for the key that the cookie holds after an opening."""
        return hmac.compare_digest(self.key.encode(), key.encode())


door = Door()


def who() -> str:
    """Who is working, for the trace: this computer's user, or "owner" where it has no name."""
    return os.environ.get("STEMWARD_WHO") or os.environ.get("USER") or "owner"
