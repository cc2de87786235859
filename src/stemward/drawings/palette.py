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
    "brick": "#A5240F",
    "brick_wash": "#F6DCD4",
    "chaff": "#C9BBA2",
}
SUN = {
    **LIGHT,
    "paper": "#FFFFFF",
    "page": "#FFFFFF",
    "ink": "#000000",
    "ash": "#000000",
    "dye": "#0B2F80",
    "brick": "#8A1500",
    "moss": "#1F4A1A",
}
DUSK = {
    **LIGHT,
    "paper": "#14130F",
    "page": "#24221B",
    "ink": "#F6EFE0",
    "ash": "#CFC5B1",
    "bark": "#C9A27E",
    "moss": "#A8CF93",
    "dye": "#93B8F7",
    "brick": "#FF9F88",
}


def contrast(one: str, other: str) -> float:
    """Contrast ratio of two colours "#RRGGBB", 1 to 21 (WCAG 2.2, relative luminance)."""

    def luminance(colour: str) -> float:
        parts = (int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5))
        linear = (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts)
        return sum(weight * c for weight, c in zip((0.2126, 0.7152, 0.0722), linear, strict=True))

    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)
