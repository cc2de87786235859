"""Typed values to figures in the reader's units, by the unit in their name."""

from collections.abc import Callable, Mapping
from typing import Literal

from stemward import units

System = Literal["us", "metric"]

IN_CM = 2.54
"""An inch in centimetres: NIST SP 811, 2008."""


OTHERS_TOLD = 0.5
"""Stems of others that are told of, since they are shown without decimals."""


def _counted(value: float, unit: str) -> units.Shown:
    return units.Shown(f"{value:.3g}", unit if value == 1 else f"{unit}s")


_BY_SUFFIX: tuple[tuple[str, Callable[[float, System], units.Shown]], ...] = (
    ("_m_s", lambda v, s: units.speed(v, "m_s", s)),
    ("_g_m2", lambda v, s: units.rate(v, "g_m2", s)),
    ("_ae_g_l", lambda v, s: units.strength(v, "g_l", s)),
    ("_g_l", lambda v, s: units.strength(v, "g_l", s)),
    ("_ml_cm2", lambda v, _: units.Shown(f"{v:.3g}", "mL on a cm²")),
    ("_cm2", lambda v, s: units.Shown(f"{v / IN_CM**2:.2g}", "in²") if s == "us" else units.Shown(f"{v:.3g}", "cm²")),
    ("_m2", lambda v, s: units.area(v, "m2", s)),
    ("_ml", lambda v, s: units.volume(v, "ml", s)),
    ("_cm", lambda v, s: units.length_small(v, "cm", s)),
    ("_frac", lambda v, s: units.percent(v, "frac", s)),
    ("_m", lambda v, s: units.length_far(v, "m", s)),
    ("_g", lambda v, s: units.mass(v, "g", s)),
    ("_c", lambda v, s: units.temperature(v, "c", s)),
    ("_min", lambda v, _: _counted(v, "minute")),
    ("_s", lambda v, _: _counted(v / 60, "minute")),
    ("_deg", lambda v, _: units.Shown(f"{v:.5f}", "°")),
    ("_h", lambda v, _: _counted(v, "hour")),
    ("_days", lambda v, _: _counted(v, "day")),
)


def figure(name: str, value: float, system: System) -> str:
    """A number in words: "distance_m" 6.7 becomes "22 ft" or "6.7 m". Names without a unit are counts."""
    for suffix, show in _BY_SUFFIX:
        if name.endswith(suffix):
            shown = show(value, system)
            return f"{shown.figure} {shown.unit}".replace(" %", " %")
    return f"{value:g}"


def bare(name: str) -> str:
    """A value's name without its unit: "distance_m" is "distance"."""
    for suffix, _ in _BY_SUFFIX:
        if name.endswith(suffix):
            return name[: -len(suffix)]
    return name


def figures(values: Mapping[str, object], system: System) -> dict[str, str]:
    """All values of a finding as words, keyed by name without unit."""
    return {
        bare(name): figure(name, float(value), system) if isinstance(value, int | float) else str(value)
        for name, value in values.items()
    }
