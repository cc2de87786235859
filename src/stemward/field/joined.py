"""Phones that may bring rows: each holds a word of its own, of which the notebook keeps the hash alone."""

import datetime
import hashlib
import secrets

from stemward.notebook.models import Phone


def new_phone(tract_id: str, name: str, now: datetime.datetime) -> str:
    """Let a phone in; the word that it has to bring, shown once."""
    word = secrets.token_urlsafe(24)
    Phone.objects.create(id=_hash(word), tract_id=tract_id, name=name[:100], made_at=now)
    return word


def phone_of(word: str, now: datetime.datetime) -> Phone | None:
    """The phone that holds a word; None for a word that is none, was ended, or whose land is gone."""
    found = Phone.objects.filter(id=_hash(word), ended_at=None, tract__removed_at=None).first()
    if found is not None and (found.seen_at is None or now - found.seen_at > SEEN_EVERY):
        Phone.objects.filter(id=found.id).update(seen_at=now)
    return found


SEEN_EVERY = datetime.timedelta(minutes=1)
"""How often it is written down that a phone was heard of."""


def end_phone(tract_id: str, phone_id: str, now: datetime.datetime) -> None:
    """Take nothing more of a phone; what it brought stays."""
    Phone.objects.filter(id=phone_id, tract_id=tract_id, ended_at=None).update(ended_at=now)


def _hash(word: str) -> str:
    return hashlib.sha256(word.encode()).hexdigest()
