"""What a change was, in a few words: names of undo and lines of the trace."""

from collections.abc import Mapping
from typing import Any

VERBS = {
    "begin": "began this tract",
    "put": "changed {what}",
    "add": "added {what}",
    "take away": "took away {what}",
    "import": "brought in {count} stems",
    "stems": "changed {count} stems",
    "take stems": "took away {count} stems",
    "count": "counted {count} stems",
    "choose": "chose {what}",
    "split": "made two arms of {what}",
    "read": "read {what} on a label",
    "rates": "brought in kill rates of {what}",
    "weigh": "chose what kill rates of others count for",
    "merge": "took over {count} differences",
    "write down": "wrote down {what}",
    "draw": "drew {what}",
    "undo": "took back: {undone}",
    "redo": "made again: {undone}",
}


def change_words(verb: str, words: Mapping[str, Any]) -> str:
    """A change as a few words without its person: "deleted 12 stems"."""
    values = {"what": "", "count": "", **words}
    if verb in ("undo", "redo"):
        values["undone"] = change_words(str(words.get("verb", "put")), words)
    return VERBS.get(verb, "changed {what}").format(**values)
