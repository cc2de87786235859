"""Rules of the hours: which weather shuts which work, unless the label says otherwise."""

from dataclasses import dataclass
from pathlib import Path

from stemward.handbook.tables import cite, figure, parts, read_table
from stemward.kinds import Cited


@dataclass(frozen=True, slots=True)
class WeatherRule:
    """One rule. methods, carriers, forms: what it is for, empty for all. limit: metric, None for a yes or no.

    weight: "shut" or "know". label_kind: the kind of label fact that takes its place, "" for none.
    """

    id: str
    matter: str
    methods: tuple[str, ...]
    carriers: tuple[str, ...]
    forms: tuple[str, ...]
    limit: float | None
    unit: str
    weight: str
    label_kind: str
    cited: Cited

    def is_for(self, method: str, carrier: str, form: str) -> bool:
        """True if it speaks of this way, mixed in this, of an ingredient in this form ("ester" or another)."""
        return (
            method in self.methods
            and (not self.carriers or carrier in self.carriers)
            and (not self.forms or form in self.forms)
        )


def load_weather_rules(folder: Path) -> tuple[WeatherRule, ...]:
    """All rules of the hours. Raises HandbookError when the table cannot be used."""
    return tuple(
        WeatherRule(
            row["id"], row["matter"], parts(row["methods"]), parts(row["carriers"]), parts(row["forms"]),
            figure(row, "limit"), row["unit"], row["weight"], row["label_kind"],
            cite(row, f"weather.{row['id']}", figure(row, "limit") or row["matter"], row["unit"]),
        )
        for row in read_table(folder, "weather_rules.csv")
    )  # fmt: skip
