"""Files made to keep a reader busy or fill its memory are refused in a moment."""

import json

import pytest

LONG = 200_000
HEAD = "id,patch,species,x_m,y_m,diameter_cm\n"


def rows(patch="rim", species="tree-of-heaven", size="4"):
    """Stems of which one column is different in each row."""
    return HEAD + "".join(
        f"t{n},{patch.format(n)},{species.format(n)},{n % 90},9,{size.format(n)}\n" for n in range(20_000)
    )


@pytest.mark.parametrize(
    ("name", "content", "message"),
    [
        ("choices.toml", "a" + ".a" * LONG + " = 1", "toml.too_deep"),
        ("choices.toml", "a" + '."b c"' * LONG + " = 1", "toml.too_deep"),
        ("choices.toml", "[[a" + ".a" * LONG + "]]", "toml.too_deep"),
        ("choices.toml", "x" * LONG, "toml.syntax"),
        ("choices.toml", "[[treat]]\n" * 20_000, "key.too_many"),
        ("choices.toml", "".join(f"k{n} = 1\n" for n in range(50_000)), "key.unknown"),
        ("stems.csv", rows(patch="p{}"), "stems.unknown_patch"),
        ("stems.csv", rows(species="oak {}"), "stems.unknown_species"),
        ("stems.csv", rows(size="x{}"), "cell.not_a_number"),
        ("stems.csv", HEAD + "1,2\n" * LONG, "csv.ragged"),
        ("stems.csv", HEAD + '"' * LONG, "csv.ragged"),
        ("records.jsonl", "x\n" * LONG, "json.syntax"),
        (
            "spared.geojson",
            json.dumps(
                {
                    "type": "FeatureCollection",
                    "features": [
                        {
                            "type": "Feature",
                            "properties": {f"k{n}": 1 for n in range(50_000)},
                            "geometry": None,
                        }
                    ],
                }
            ).replace(",", ",\n"),
            "geo.unknown_property",
        ),
        (
            "spared.geojson",
            json.dumps({"type": "FeatureCollection", "features": [None] * 300_000}),
            "key.too_many",
        ),
    ],
)
def test_hostile_files(tract, name, content, message):
    """Each is refused for what it is, with at most fifty problems told."""
    tract.write(name, content)

    problems = tract.problems()
    assert message in {p.message for p in problems}
    assert len(problems) <= 51


def test_questions_without_end(tract):
    """Of thousands of questions a hundred are asked, and then how many more there are."""
    point = {"type": "Point", "coordinates": [1, 2]}
    features = [
        {"type": "Feature", "properties": {"id": f"t{n}", "kind": "tree"}, "geometry": point} for n in range(300)
    ]
    tract.write("spared.geojson", json.dumps({"type": "FeatureCollection", "features": features}))

    questions = tract.questions()
    assert len(questions) == 101
    assert (questions[-1].message, questions[-1].values) == ("ask.more", (("count", 200),))
