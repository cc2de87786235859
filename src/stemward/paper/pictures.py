"""Which drawing a page carries, and the sentence that stands for it where it cannot be seen."""

from collections.abc import Mapping
from typing import Any

from stemward import drawings
from stemward.say import Speaker


class Pictures:
    """Drawings for one speaker's words and units, each as svg, width, alternative text and caption."""

    def __init__(self, speaker: Speaker) -> None:
        self.speaker = speaker

    def palette(self) -> dict[str, str]:
        """The colours of paper."""
        return dict(drawings.LIGHT)

    def findings(self) -> dict[str, str]:
        """The signs of the four weights."""
        return {weight: drawings.sign(weight) for weight in ("stop", "find out", "know", "checked")}

    def treatment(self, item: Mapping[str, Any]) -> dict[str, Any] | None:
        """A stump from above or the cuts of a stem, of middle size; None without herbicide."""
        typical = item.get("typical")
        if not typical:
            return None
        say = self.speaker
        across, dose = say.number("across_cm", typical["diameter_cm"]), say.number("dose_ml", typical["mix_ml"])
        if typical["cuts"] is not None:
            words = {"across": across, "cuts": str(typical["cuts"]), "dose": dose, "stem": typical["id"]}
            drawn = drawings.cuts(typical["cuts"], {"across": across})
            return {**self._with(drawn, say.word("alt_cuts", **words), say.word("caption_cuts", **words)), "bar": None}
        if item["how"] == "basal bark":
            return self._band(typical, across, dose)
        if item["how"] == "foliar":
            return self._plant(typical, dose)
        wet_cm2 = typical["wet_cm2"]
        ring_cm = drawings.ring_of(typical["diameter_cm"], wet_cm2)
        ring = say.number("ring_cm", ring_cm) if ring_cm is not None else ""
        words = {"across": across, "dose": dose, "stem": typical["id"], "ring": ring}
        kind = "ring" if ring_cm is not None else "whole"
        drawn = drawings.stump(typical["diameter_cm"], ring_cm, typical["id"], {"across": across, "ring": ring})
        caption = say.word(f"caption_{kind}", **words)
        bar = self._check_bar() if drawn.scale == 1.0 else None
        on_paper = self._with(drawn, say.word(f"alt_{kind}", **words), f"{caption} {self._scale(drawn)}")
        return {**on_paper, "bar": bar, "on_screen": caption}

    def _band(self, typical: Mapping[str, Any], across: str, dose: str) -> dict[str, Any]:
        """The foot of a stem with its band."""
        say = self.speaker
        band_cm = say.cited("default.band_height_cm")
        words = {"across": across, "band": say.number("band_cm", band_cm), "dose": dose, "stem": typical["id"]}
        drawn = drawings.band(typical["diameter_cm"], band_cm, typical["id"], words)
        caption = say.word("caption_band", **words)
        return {**self._with(drawn, say.word("alt_band", **words), caption), "bar": None}

    def _plant(self, typical: Mapping[str, Any], dose: str) -> dict[str, Any]:
        """A plant against a person."""
        say = self.speaker
        height_m = typical["height_m"] or say.cited("default.height_unknown_m")
        words = {
            "height": say.number("height_m", height_m),
            "reach": say.number("reach_m", drawings.REACH_M),
            "dose": dose,
            "stem": typical["id"],
        }
        drawn = drawings.plant(height_m, say.cited("default.crown_width_share"), typical["id"], words)
        kind = "over" if drawn.numbers["over_reach"] else "within"
        caption = say.word(f"caption_plant_{kind}", **words)
        return {**self._with(drawn, say.word("alt_plant", **words), caption), "bar": None}

    def _scale(self, drawn: drawings.Drawing) -> str:
        if drawn.scale == 1.0:
            return self.speaker.word("true_size")
        return self.speaker.word("scale", ratio=f"{1 / drawn.scale:g}") if drawn.scale else ""

    def _check_bar(self) -> dict[str, Any]:
        """The bar by which a true-size page is checked."""
        long_cm = 5.08 if self.speaker.units == "us" else 5.0
        words = self.speaker.number("bar_cm", long_cm)
        return self._with(drawings.check_bar(long_cm, words), self.speaker.word("alt_bar", bar=words), "")

    def ladder(self, mix: Mapping[str, Any], batch: Mapping[str, Any], order: Any) -> dict[str, Any]:
        """The pour ladder of a batch."""
        say = self.speaker
        slices = [(say.part_name(p["what"], mix["carrier"]), p["ml"], p["what"] == "product") for p in order]
        levels = [say.number("mix_ml", sum(s[1] for s in slices[: n + 1])) for n in range(len(slices))]
        # Only the lower part of a large bottle is drawn, so that a small batch can be read.
        whole_ml = mix["vessel"]["capacity_ml"]
        capacity_ml = min(whole_ml, batch["mixed_ml"] * 1.6)
        marks = drawings.even_marks(capacity_ml, say.units)
        named = [(ml, say.number("mix_ml", ml)) for ml in marks]
        drawn = drawings.pour_ladder(capacity_ml, named, slices, levels, torn=capacity_ml < whole_ml)
        poured = ", ".join(f"{say.number('mix_ml', ml)} {name}" for name, ml, _ in slices)
        alt = say.word("alt_ladder", mixed=say.number("mix_ml", batch["mixed_ml"]), parts=poured)
        return self._with(drawn, alt, "")

    def map(self, plan: Mapping[str, Any]) -> dict[str, Any]:
        """The scaled plan of the tract."""
        say, tract = self.speaker, plan["tract"]
        stems = [
            (float(x), float(y))
            for t in plan["treatments"]
            for x, y in zip(plan["columns"][t["id"]]["x_m"], plan["columns"][t["id"]]["y_m"], strict=True)
        ]
        drawn = drawings.plan_drawing(
            [(p["name"], p["shape"]["rings"]) for p in tract["patches"] if p["shape"]],
            stems,
            [(s["id"], s["kind"], s["shape"]) for s in tract["spared"]],
            say.units,
            say.word("scale_bar_paces"),
        )
        words = {"stems": len(stems), "kept": len(tract["spared"]), "patches": len(tract["patches"])}
        beyond, named = (int(drawn.numbers[key]) for key in ("kept_beyond", "kept_named"))
        notes = [say.word("caption_map", **words)]
        if beyond:
            notes.append(say.word("map_beyond", count=beyond))
        if tract["spared"] and not named:
            notes.append(say.word("map_unnamed"))
        return self._with(drawn, say.word("alt_map", **words), " ".join(notes))

    def _with(self, drawn: drawings.Drawing, alt: str, caption: str) -> dict[str, Any]:
        return {"svg": drawn.svg, "width_mm": drawn.width_mm, "alt": alt, "caption": caption}
