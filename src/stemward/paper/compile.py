"""Typst to PDF, with words that the face has no signs for shown as question marks rather than no page at all."""

import datetime
import json
import re
from importlib import resources
from typing import Any

_MISSING = re.compile(r'the text `"(.+?)"` could not be displayed', re.S)
MOST_TRIES = 20
KEPT = re.compile("[\u0020-\u017f\u2010-\u2026\u2030\u20ac\u2122\u2190-\u2193\u2260-\u2265\u00b7]")
"""Signs that the face is known to have: Latin with its marks, and common punctuation."""


def to_pdf(template: str, data: dict[str, Any], as_of: datetime.date) -> bytes:
    """Compile a template of this room with its data as PDF/UA-1. The same data and day give the same bytes."""
    import typst

    source = (resources.files("stemward.paper") / template).read_bytes()
    when = datetime.datetime(as_of.year, as_of.month, as_of.day, tzinfo=datetime.UTC)
    with resources.as_file(resources.files("stemward.paper") / "fonts") as folder:
        fonts: Any = [str(folder)]

        def once(inputs: dict[str, str]) -> bytes:
            return bytes(
                typst.compile(
                    source, format="pdf", pdf_standards="ua-1", ignore_system_fonts=True, font_paths=fonts,
                    timestamp=when, sys_inputs=inputs,
                )
            )  # fmt: skip

        return _retried(once, data)


def query(template: str, data: dict[str, Any], selector: str) -> list[Any]:
    """The values of all metadata with a label, in the order of the pages."""
    import typst

    source = (resources.files("stemward.paper") / template).read_bytes()
    with resources.as_file(resources.files("stemward.paper") / "fonts") as folder:
        fonts: Any = [str(folder)]
        found = typst.query(
            source, selector, ignore_system_fonts=True, font_paths=fonts, sys_inputs={"data": as_text(data)}
        )
    return [one["value"] for one in json.loads(found)]


def as_text(data: Any) -> str:
    """Data as the templates take it."""
    return json.dumps(data, sort_keys=True)


def _retried(once: Any, data: dict[str, Any]) -> bytes:
    import typst

    for attempt in range(MOST_TRIES):
        try:
            return bytes(once({"data": as_text(data)}))
        except typst.TypstError as error:
            missing = _MISSING.search(str(error))
            if missing is None:
                raise
            data = _without(data, None if attempt == 0 else missing[1])
    return bytes(once({"data": as_text(data)}))


def _without(data: Any, sign: str | None) -> Any:
    """The data with a sign, or with every sign outside the known ones, as question marks."""
    if isinstance(data, str):
        if sign is None:
            return "".join(c if KEPT.match(c) or c in "\n\t" else "?" for c in data)
        return data.replace(sign, "?" * len(sign))
    if isinstance(data, dict):
        return {key: _without(value, sign) for key, value in data.items()}
    if isinstance(data, list):
        return [_without(value, sign) for value in data]
    return data
