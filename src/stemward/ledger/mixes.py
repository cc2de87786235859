"""Every mix really made, and where it went: onto plants, kept, spilled, thrown away."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from stemward.kinds import UL_PER_ML, Entry
from stemward.ledger.in_force import in_force

KEPT = "kept in a labelled bottle"
SLACK_UL = 5_000
"""What clings to a bottle and is not asked about: engineering guess, 5 mL."""


@dataclass(frozen=True, slots=True)
class Batch:
    """A mix made on a day. Integer microlitres. left_ul: what is not accounted for or is kept; below nothing where
    more was put on than was mixed.

    kept_in: the labelled bottle it is kept in, "" if none. products: of which products.
    """

    batch: str
    day: str
    mixed_ul: int
    used_ul: int = 0
    gone_ul: int = 0
    kept_in: str = ""
    products: tuple[str, ...] = ()
    concentration_frac: float = 0.0
    carrier: str = ""
    found_ul: int | None = None

    @property
    def left_ul(self) -> int:
        """What should be left, or what someone found when they looked."""
        return self.mixed_ul - self.used_ul - self.gone_ul if self.found_ul is None else self.found_ul

    @property
    def open(self) -> bool:
        """True while it is not known what became of the rest."""
        return not self.kept_in and abs(self.left_ul) > SLACK_UL

    @property
    def overused(self) -> bool:
        """True where more was put on than was mixed."""
        return self.left_ul < -SLACK_UL


def batches(entries: Iterable[Entry]) -> dict[str, Batch]:
    """Every batch by its name, in the order in which they were mixed."""
    rows = in_force(entries)
    found: dict[str, Batch] = {}
    for entry in rows:
        if entry.kind == "batch mixed":
            body = entry.body
            products = tuple(dict.fromkeys(d["product"] for d in body["drawn"]))
            found[str(body["batch"])] = Batch(
                str(body["batch"]), entry.at[:10], round(body["mixed_ml"] * UL_PER_ML), products=products,
                concentration_frac=float(body.get("concentration_frac", 0.0)), carrier=str(body.get("carrier", "")),
            )  # fmt: skip
    for entry in rows:
        name = str(entry.body.get("batch", ""))
        if name in found:
            found[name] = _moved(found[name], entry)
    return found


def _moved(batch: Batch, entry: Entry) -> Batch:
    body = entry.body
    if entry.kind == "treated":
        used = round(body.get("mix_ml", 0.0) * UL_PER_ML)
        found = None if batch.found_ul is None else batch.found_ul - used
        return replace(batch, used_ul=batch.used_ul + used, found_ul=found)
    if entry.kind != "mix left":
        return batch
    ml, what = body.get("ml"), body["what"]
    ul = None if ml is None else round(ml * UL_PER_ML)
    if what == KEPT:
        return replace(batch, kept_in=str(body.get("bottle") or "a labelled bottle"), found_ul=ul)
    if what == "looked at":
        return replace(batch, found_ul=ul)
    amount = batch.left_ul if ul is None else ul
    found = None if batch.found_ul is None else batch.found_ul - amount
    emptied = batch.left_ul - amount <= SLACK_UL
    return replace(batch, gone_ul=batch.gone_ul + amount, found_ul=found, kept_in="" if emptied else batch.kept_in)
