"""Colours by what they mean. Dye is herbicide and nothing else; brick is stop and nothing else."""

LIGHT = {
    "paper": "#FBF7EE",
    "page": "#F1E9D8",
    "white": "#FFFFFF",
    "ink": "#1B1A17",
    "ash": "#4A443A",
    "bark": "#442E1F",
    "moss": "#4F6B43",
    "dye": "#123F99",
    "dye_wash": "#CBDBF4",
    "moss_wash": "#DCE6CD",
    "brick": "#A5240F",
    "brick_wash": "#F6DCD4",
    "chaff": "#C9BBA2",
}
"""Paper, and screens indoors."""

SUN = {
    **LIGHT,
    "paper": "#FFFFFF",
    "page": "#FFFFFF",
    "ink": "#000000",
    "ash": "#000000",
    "bark": "#000000",
    "moss": "#1F4A1A",
    "dye": "#0B2F80",
    "dye_wash": "#FFFFFF",
    "moss_wash": "#FFFFFF",
    "brick": "#8A1500",
    "brick_wash": "#FFFFFF",
}
"""Screens in full sun: black on white, no washes, no second text colour."""

DUSK = {
    **LIGHT,
    "paper": "#14130F",
    "page": "#24221B",
    "ink": "#F6EFE0",
    "ash": "#CFC5B1",
    "bark": "#C9A27E",
    "moss": "#A8CF93",
    "dye": "#93B8F7",
    "dye_wash": "#24221B",
    "moss_wash": "#24221B",
    "brick": "#FF9F88",
    "brick_wash": "#24221B",
    "chaff": "#5C5444",
}
"""Screens in the dark; what is washed in the light stands on the raised ground."""


def contrast(one: str, other: str) -> float:
    """Contrast ratio of two colours "#RRGGBB", 1 to 21 (WCAG 2.2, relative luminance)."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def luminance(colour: str) -> float:
    """Relative luminance of "#RRGGBB", 0 to 1 (WCAG 2.2)."""
    parts = (int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5))
    linear = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts)
    return sum(weight * c for weight, c in zip((0.2126, 0.7152, 0.0722), linear, strict=True))
