"""A good tract folder to spoil in one place, and stand-ins for the handbook and the kinds of label facts."""

import difflib
from dataclasses import dataclass
from pathlib import Path

import pytest

from stemward.gate import folder
from stemward.gate.problems import MESSAGES, Problem
from stemward.kinds import Question

TRACT = """\
name = "Example Tract"
place = "an invented county"
state = "WI"
time_zone = "America/Chicago"
who = "own"
invented = true
kept_asked = ["rim"]

[emergency]
poison_help = "1-800-222-1222"
call = "911"

[[patches]]
id = "rim"
name = "Quarry rim"
places = ["non-crop"]
area = "0.9 ha"

[patches.answers]
grazed = "no"

[patches.soil]
texture = "sandy loam"
organic_matter = "1.5 %"

[[patches]]
id = "meadow"
places = ["wet"]

[[people]]
role = "owner"
does = ["mix", "apply"]
gear = ["boots"]
certified = "no"

[[vessels]]
id = "bottle"
capacity = "24 fl oz"

[[measures]]
id = "cup"
mark = "1/2 fl oz"
capacity = "8 fl oz"
"""

STEMS = """\
id,patch,species,x_m,y_m,diameter_cm,diameter_in,measured_at,stems,height_m,form,state,note
s1,rim,tree-of-heaven,12.5,48,9.5,,stump,1,6,tree,standing,
s2,rim,Tree-of-Heaven,14,50.25,,3 3/4,breast,2,,,,leans over the lane
s3,meadow,glossy buckthorn,150,20,4,,,,,,,
"""

PATCHES = """\
{"type": "FeatureCollection", "features": [
{"type": "Feature", "properties": {"id": "rim"},
 "geometry": {"type": "Polygon", "coordinates": [[[0, 0], [90, 0], [90, 100], [0, 100], [0, 0]]]}},
{"type": "Feature", "properties": {"id": "meadow"},
 "geometry": {"type": "Polygon", "coordinates": [[[100, 0], [200, 0], [200, 100], [100, 100], [100, 0]]]}}
]}
"""

SPARED = """\
{"type": "FeatureCollection", "features": [
{"type": "Feature", "properties": {"id": "oak-1", "kind": "tree", "species": "bur oak", "dbh_in": "16 1/2"},
 "geometry": {"type": "Point", "coordinates": [80, 80]}},
{"type": "Feature", "properties": {"id": "creek", "kind": "water"},
 "geometry": {"type": "LineString", "coordinates": [[0, -20], [200, -25]]}}
]}
"""

JUG = """\
id = "glyphosate-4lb"
name = "Example glyphosate"
invented = true
number = "QH-0001"
formulation = "salt in water"

[[ingredients]]
ingredient = "Glyphosate"
form = "isopropylamine salt"
strength = "4 lb ae/gal"

[[containers]]
id = "jug 1"
holds = "2.5 gal"
left = "38 fl oz"

[[registered]]
state = "WI"
registered = true
looked_by = "owner"
looked_on = 2025-09-30

[[facts]]
kind = "strongest mix"
says = "50 %"
page = "12"
read_by = "owner"
read_on = 2025-09-30
scope = { method = ["cut stump"], stem = ["0 in", "3 in"], dates = ["04-01", "07-31"] }

[[facts]]
kind = "site"
standing = "not found"
of = "wet"
proposed = true
"""

CHOICES = """\
[[treat]]
patch = "rim"
species = "tree-of-heaven"
how = "cut stump"
product = "glyphosate-4lb"
concentration = "50 %"
tool = "squirt bottle"
ring = "2 in"
"""

RECORDS = """\
{"id": "e1", "kind": "treated", "at": "2025-09-30T09:30", "offset": -300, "by": "owner", "body": \
{"patch": "rim", "product": "glyphosate-4lb", "ae_g": {"glyphosate": 120}}}
"""

GOOD = {
    "tract.toml": TRACT,
    "stems.csv": STEMS,
    "patches.geojson": PATCHES,
    "spared.geojson": SPARED,
    "shelf/glyphosate.toml": JUG,
    "choices.toml": CHOICES,
    "records.jsonl": RECORDS,
}


@dataclass(frozen=True)
class FakePlant:
    latin: str
    max_dbh_cm: float | None = None


@dataclass(frozen=True)
class FakeNear:
    candidates: tuple[tuple[str, str], ...]


PLANTS = {
    "tree-of-heaven": FakePlant("Ailanthus altissima", 100.0),
    "glossy buckthorn": FakePlant("Frangula alnus", 15.0),
    "bur oak": FakePlant("Quercus macrocarpa"),
}


def find_species(text: str) -> FakePlant | FakeNear:
    """A handbook of three plants."""
    if text.casefold() in PLANTS:
        return PLANTS[text.casefold()]
    for plant in PLANTS.values():
        if text == plant.latin:
            return plant
    near = difflib.get_close_matches(text.casefold(), PLANTS)
    return FakeNear(tuple((name, PLANTS[name].latin) for name in near))


@dataclass(frozen=True)
class FakeKind:
    name: str
    value: str
    dimension: str = ""
    unit: str = ""
    choices: tuple[str, ...] = ()
    many: bool = False
    not_found: str = "looked for, not there"
    no_limit: str = ""
    not_apply: str = ""


KINDS = {
    kind.name: kind
    for kind in (
        FakeKind("strongest mix", "number", "fraction", "frac", no_limit="undiluted"),
        FakeKind("distance to water", "number", "length", "cm"),
        FakeKind("most applications", "number", "count"),
        FakeKind("site", "choice", choices=("woods", "non-crop", "wet"), many=True),
        FakeKind("method", "choice", choices=("cut stump", "foliar"), many=True),
        FakeKind("carrier", "choice", choices=("water", "oil"), many=True),
        FakeKind("equipment", "choice", choices=("boots", "goggles"), many=True),
        FakeKind("vessel forbidden", "choice", choices=("plastic", "galvanised steel"), many=True),
        FakeKind("plant", "text", many=True),
        FakeKind("state excluded", "text", many=True),
        FakeKind("restricted use", "yes-no"),
        FakeKind("first aid", "text", many=True),
    )
}

TOOLS = ("squirt bottle", "dauber")
STATES = {"WI": "Wisconsin", "WY": "Wyoming", "CA": "California"}


def check_values(problems: tuple[Problem, ...]) -> None:
    """Fails unless each problem has the values of its message, and only words and numbers."""
    for problem in problems:
        assert set(problem.values) == set(MESSAGES[problem.message]), problem
        assert all(isinstance(value, str | int | float) for value in problem.values.values()), problem


@dataclass(frozen=True)
class TractFolder:
    """A folder on disk that starts out good."""

    path: Path

    def write(self, name: str, content: str | bytes) -> None:
        """Write a file, text as UTF-8 with its line ends as they are."""
        file = self.path / name
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(content if isinstance(content, bytes) else content.encode())

    def change(self, name: str, old: str, new: str) -> None:
        """Replace a piece of a good file that stands there once."""
        assert GOOD[name].count(old) == 1, f"{old!r} stands {GOOD[name].count(old)} times in {name}"
        self.write(name, GOOD[name].replace(old, new))

    def read(self) -> folder.Read:
        """Read the folder."""
        return folder.read(self.path, find_species, KINDS, TOOLS, STATES)

    def problems(self) -> tuple[Problem, ...]:
        """What is wrong with the folder; fails if it can be read."""
        with pytest.raises(folder.Unreadable) as caught:
            self.read()
        check_values(caught.value.problems)
        return caught.value.problems

    def problem(self) -> Problem:
        """The one thing that is wrong with the folder."""
        problems = self.problems()
        assert len(problems) == 1, problems
        return problems[0]

    def questions(self) -> tuple[Question, ...]:
        """What is doubtful in a folder that can be read."""
        questions = self.read().questions
        for question in questions:
            assert {name for name, _ in question.values} == set(MESSAGES[question.message]), question
        return questions

    def question(self) -> Question:
        """The one thing that is doubtful."""
        questions = self.questions()
        assert len(questions) == 1, questions
        return questions[0]


@pytest.fixture(scope="session")
def good() -> dict[str, bytes]:
    """The files of a good folder."""
    return {name: text.encode() for name, text in GOOD.items()}


@pytest.fixture(scope="session")
def outcome(tmp_path_factory: pytest.TempPathFactory):
    """Reads a folder of the given files: "read" with its questions, or "refused" with its problems."""
    made = TractFolder(tmp_path_factory.mktemp("fuzz") / "tract")
    on_disk: dict[str, bytes] = {}

    def run(files: dict[str, bytes]) -> tuple[str, tuple[Problem, ...] | tuple[Question, ...]]:
        for name, raw in files.items():
            if on_disk.get(name) != raw:
                made.write(name, raw)
        on_disk.update(files)
        try:
            return "read", made.questions()
        except folder.Unreadable as error:
            check_values(error.problems)
            return "refused", error.problems

    return run


@pytest.fixture
def tract(tmp_path: Path) -> TractFolder:
    """A good tract folder."""
    made = TractFolder(tmp_path / "tract")
    for name, text in GOOD.items():
        made.write(name, text)
    return made
