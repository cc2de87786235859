"""The PDFs of labels that the notebook keeps, and pictures of their pages."""

import hashlib
from dataclasses import asdict
from functools import lru_cache
from typing import Any

from django.http import Http404

from stemward.gate.label_pdf import LabelRead, page_picture, read_label
from stemward.label.reader import NotReadable
from stemward.notebook.changes import Refused
from stemward.notebook.models import LabelFile
from stemward.say.en import reader as words
from stemward.web import clock

SCALE = 2.0
"""Pictures have 144 dots an inch, so that letters of 6 points can be read at 150 % of the paper's size."""
MOST_PICTURES = 60
"""Pictures kept in memory, each some hundred kilobytes: engineering guess."""


def files_of(tract_id: str, product: str) -> list[LabelFile]:
    """The label files of a product without their content, the newest last."""
    return list(LabelFile.objects.filter(tract_id=tract_id, product=product).defer("content"))


def newest(tract_id: str, product: str) -> LabelFile | None:
    """The label file that was sent last."""
    return LabelFile.objects.filter(tract_id=tract_id, product=product).defer("content").last()


def read_and_keep(tract_id: str, product: str, raw: bytes, name: str) -> tuple[LabelFile, LabelRead]:
    """Read a label's PDF and keep it. The same file again becomes the newest. Raises Refused with a sentence."""
    try:
        found = read_label(raw)
    except NotReadable as wrong:
        raise Refused(words.NOT_READABLE[wrong.message]) from None
    kept, _ = LabelFile.objects.update_or_create(
        tract_id=tract_id, product=product, digest=hashlib.sha256(raw).hexdigest(),
        defaults={"name": name[:200], "at": clock.now(), "content": raw, "reading": asdict(found)},
        create_defaults={
            "name": name[:200], "at": clock.now(), "content": raw, "reading": asdict(found), "confirmed": {},
        },
    )  # fmt: skip
    return kept, found


def content_of(tract_id: str, product: str, digest: str) -> bytes:
    """The PDF itself. Raises Http404."""
    have = LabelFile.objects.filter(tract_id=tract_id, product=product, digest=digest).values_list("content", flat=True)
    raw = have.first()
    if raw is None:
        raise Http404
    return bytes(raw)


@lru_cache(maxsize=MOST_PICTURES)
def picture(tract_id: str, product: str, digest: str, number: int) -> bytes:
    """A page as PNG, made in a process of its own. Raises Http404 for a page that is not there or cannot be shown."""
    try:
        return page_picture(content_of(tract_id, product, digest), number, SCALE)
    except NotReadable:
        raise Http404 from None


def facts_read(have: dict[str, Any]) -> list[dict[str, Any]]:
    """The facts of a product that a person has read."""
    return [fact for fact in have.get("facts", ()) if "read_by" in fact]
