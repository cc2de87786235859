"""Rows of the notebook. What they hold is read and checked by room `gate`; nothing here judges."""

from django.db import models

from stemward.gate.pieces import STEM_COLUMNS
from stemward.notebook.fields import AsWritten


class Tract(models.Model):
    """One piece of land. version grows by one with every change, so that what was worked out can be kept."""

    id = models.CharField(primary_key=True, max_length=36)
    version = models.PositiveIntegerField(default=1)
    example = models.BooleanField(default=False)
    made_at = models.DateTimeField()
    removed_at = models.DateTimeField(null=True)

    def __str__(self) -> str:
        return self.id


class Piece(models.Model):
    """One part of a tract, as `gate.pieces` gives it."""

    tract = models.ForeignKey(Tract, on_delete=models.CASCADE, related_name="pieces")
    kind = models.CharField(max_length=20)
    key = models.CharField(max_length=400)
    place = models.PositiveIntegerField()
    body = AsWritten()

    class Meta:
        ordering = ("place",)
        constraints = (models.UniqueConstraint(fields=("tract", "kind", "key"), name="one_piece_of_a_name"),)

    def __str__(self) -> str:
        return f"{self.kind} {self.key}"


class Stem(models.Model):
    """One stem, its cells as typed.

    gone_by: the change that took it away, or whose undoing did; then it is kept and not shown. taken_in: the change
    that last took it away, also when that was undone. edits: how many changes of its cells stand.
    """

    tract = models.ForeignKey(Tract, on_delete=models.CASCADE, related_name="stems_kept")
    place = models.PositiveIntegerField()
    made_by = models.CharField(max_length=36)
    taken_in = models.CharField(max_length=36, default="", blank=True)
    edits = models.PositiveIntegerField(default=0)
    gone_by = models.CharField(max_length=36, default="", blank=True)
    key = models.CharField(max_length=40)
    patch = models.CharField(max_length=40)
    species = models.CharField(max_length=200)
    x_m = models.CharField(max_length=40)
    y_m = models.CharField(max_length=40)
    diameter_cm = models.CharField(max_length=40)
    diameter_in = models.CharField(max_length=40)
    measured_at = models.CharField(max_length=40)
    stems = models.CharField(max_length=40)
    height_m = models.CharField(max_length=40)
    form = models.CharField(max_length=40)
    state = models.CharField(max_length=40)
    note = models.CharField(max_length=200)

    class Meta:
        constraints = (
            models.UniqueConstraint(fields=("tract", "key"), condition=models.Q(gone_by=""), name="one_stem_of_a_name"),
        )
        indexes = (models.Index(fields=("tract", "place"), name="stems_in_order"),)

    def __str__(self) -> str:
        return self.key


CELLS = ("key", *STEM_COLUMNS[1:])
"""Fields of a stem in the order of STEM_COLUMNS; "id" is called key, since Django has an id of its own."""


class Entry(models.Model):
    """Something that happened. Only ever added; what was wrong is corrected by another entry."""

    tract = models.ForeignKey(Tract, on_delete=models.PROTECT, related_name="entries")
    key = models.CharField(max_length=200)
    row = AsWritten()

    class Meta:
        ordering = ("id",)
        constraints = (models.UniqueConstraint(fields=("tract", "key"), name="one_entry_of_a_name"),)

    def __str__(self) -> str:
        return self.key


class Change(models.Model):
    """Who changed what, when. Only ever added; undoing is a change of its own, of the change it names.

    id: made by whoever asks, so that asking twice changes once. asked: digest of what was asked under that id.
    before, after: each touched piece or stem as it was and is, null where there was or is none.
    """

    id = models.CharField(primary_key=True, max_length=36)
    tract = models.ForeignKey(Tract, on_delete=models.PROTECT, related_name="changes")
    number = models.PositiveIntegerField()
    who = models.CharField(max_length=100)
    at = models.DateTimeField()
    verb = models.CharField(max_length=40)
    words = AsWritten()
    asked = models.CharField(max_length=64)
    before = AsWritten()
    after = AsWritten()
    added = models.PositiveIntegerField(default=0)
    taken = models.PositiveIntegerField(default=0)
    of = models.CharField(max_length=36, default="", blank=True)

    class Meta:
        ordering = ("number",)
        constraints = (models.UniqueConstraint(fields=("tract", "number"), name="changes_in_order"),)

    def __str__(self) -> str:
        return f"{self.number} {self.verb}"


class GivenOut(models.Model):
    """What a tract was when it was given out as a folder, so that two people's folders can be merged."""

    tract = models.ForeignKey(Tract, on_delete=models.CASCADE, related_name="given_out")
    hash = models.CharField(max_length=64)
    at = models.DateTimeField()
    texts = models.BinaryField()

    class Meta:
        constraints = (models.UniqueConstraint(fields=("tract", "hash"), name="given_out_once"),)

    def __str__(self) -> str:
        return self.hash


class Background(models.Model):
    """What lies under a tract's drawing: a picture with its corners in metres, or the address of map tiles.

    No part of the land: it is not given out, merged or undone, and nothing is worked out from it.
    """

    tract = models.OneToOneField(Tract, on_delete=models.CASCADE, primary_key=True, related_name="background")
    body = AsWritten()
    media = models.CharField(max_length=40, default="", blank=True)
    content = models.BinaryField(default=b"")

    def __str__(self) -> str:
        return str(self.body.get("name", ""))


class LabelFile(models.Model):
    """The PDF of a product's label and what the reader made of it.

    No part of the land: it is not given out, merged or undone. What a person reads in it stands with the product.
    digest: SHA-256 of the file. reading: pages, parts, sentences and proposed facts, each with its place.
    confirmed: what the person said of it against the jug; empty until then.
    """

    tract = models.ForeignKey(Tract, on_delete=models.CASCADE, related_name="label_files")
    product = models.CharField(max_length=400)
    digest = models.CharField(max_length=64)
    name = models.CharField(max_length=200)
    at = models.DateTimeField()
    content = models.BinaryField()
    reading = AsWritten()
    confirmed = AsWritten()

    class Meta:
        ordering = ("at", "id")
        constraints = (models.UniqueConstraint(fields=("tract", "product", "digest"), name="one_label_file"),)

    def __str__(self) -> str:
        return self.name


class Phone(models.Model):
    """A phone that may bring rows for one tract. id: SHA-256 of the word that it holds; the word itself is not kept."""

    id = models.CharField(primary_key=True, max_length=64)
    tract = models.ForeignKey(Tract, on_delete=models.CASCADE, related_name="phones")
    name = models.CharField(max_length=100)
    made_at = models.DateTimeField()
    ended_at = models.DateTimeField(null=True)
    seen_at = models.DateTimeField(null=True)

    def __str__(self) -> str:
        return self.name


class Brought(models.Model):
    """A row as a phone brought it, the first time: what became of it and what is odd about it.

    digest: SHA-256 of the row. state: "kept" (it is an entry) or "refused". why: what is odd, by `say.en.phones.WHY`,
    or the sentence it was refused with; is_odd: whether there is any. off_s: how far the phone's clock was ahead of
    the notebook's, seconds.
    settled_at: when a person saw to what is odd.
    """

    tract = models.ForeignKey(Tract, on_delete=models.CASCADE, related_name="brought")
    key = models.CharField(max_length=200)
    digest = models.CharField(max_length=64)
    row = AsWritten()
    device = models.CharField(max_length=100)
    at = models.DateTimeField()
    off_s = models.FloatField(null=True)
    state = models.CharField(max_length=10)
    why = AsWritten()
    is_odd = models.BooleanField(default=False)
    settled_at = models.DateTimeField(null=True)

    class Meta:
        ordering = ("id",)
        constraints = (models.UniqueConstraint(fields=("tract", "key", "digest"), name="brought_once"),)

    def __str__(self) -> str:
        return f"{self.key} {self.state}"


class Photo(models.Model):
    """A small picture taken in the woods. digest: SHA-256, by which entries name it."""

    tract = models.ForeignKey(Tract, on_delete=models.CASCADE, related_name="photos")
    digest = models.CharField(max_length=64)
    content = models.BinaryField()
    at = models.DateTimeField()

    class Meta:
        constraints = (models.UniqueConstraint(fields=("tract", "digest"), name="photo_once"),)

    def __str__(self) -> str:
        return self.digest


class Kept(models.Model):
    """A small thing remembered between visits: column matches of an import, when the last copy was made."""

    name = models.CharField(primary_key=True, max_length=200)
    body = AsWritten()

    def __str__(self) -> str:
        return self.name
