"""tract.toml, shelf/*.toml and choices.toml with a slip of the hand in each place."""

import pytest

JUG = "shelf/glyphosate.toml"


def place(problem):
    """What is wrong, and where."""
    return problem.message, problem.file, problem.line, problem.column


@pytest.mark.parametrize("name", ["tract.toml", JUG, "choices.toml"])
def test_syntax(tract, name):
    """A line that is no TOML is told with its line."""
    text = (tract.path / name).read_text()
    tract.write(name, text + "\nthis is prose\n")

    problem = tract.problems()[0]
    assert (problem.message, problem.file) == ("toml.syntax", name)
    assert problem.line == text.count("\n") + 2


def test_text_that_is_not_closed(tract):
    """A missing quote is told with its line and place in it."""
    tract.change("tract.toml", 'state = "WI"', 'state = "WI')

    problem = tract.problems()[0]
    assert (problem.message, problem.line, problem.values["at"]) == ("toml.syntax", 3, 12)


@pytest.mark.parametrize("text", ["a = " + "[" * 50_000, "a = " + "9" * 5000, "a = 2026-13-45", "a = 1\na = 2"])
def test_hostile_toml(tract, text):
    """Endless brackets and numbers, days that are none and keys that stand twice are refused."""
    tract.write("choices.toml", text)

    problem = tract.problem()
    assert problem.message in ("toml.syntax", "toml.too_deep")


@pytest.mark.parametrize(
    ("name", "old", "new", "line", "column"),
    [
        ("tract.toml", "time_zone", "timezone", 4, "timezone"),
        ("tract.toml", "grazed", "grased", 20, "patches.answers.grased"),
        ("tract.toml", "texture", "textur", 23, "patches.soil.textur"),
        ("tract.toml", "certified", "certificate", 34, "people.certificate"),
        (JUG, "number =", "numbr =", 4, "numbr"),
        (JUG, 'page = "12"', 'pages = "12"', 26, "facts.pages"),
        ("choices.toml", "tool", "toll", 7, "treat.toll"),
    ],
)
def test_unknown_keys(tract, name, old, new, line, column):
    """A key that is not known is told with its line, its table and what may be meant."""
    tract.change(name, old, new)

    problem = next(p for p in tract.problems() if p.message == "key.unknown")
    assert place(problem) == ("key.unknown", name, line, column)
    assert problem.values["near"].split(", ")[0] == old.split(" ")[0]


@pytest.mark.parametrize(
    ("name", "old", "line", "column"),
    [
        ("tract.toml", 'name = "Example Tract"\n', None, "name"),
        ("tract.toml", 'id = "rim"\n', 13, "patches.id"),
        ("tract.toml", 'role = "owner"\n', 30, "people.role"),
        ("tract.toml", 'capacity = "24 fl oz"\n', 36, "vessels.capacity"),
        ("tract.toml", 'mark = "1/2 fl oz"\n', 40, "measures.mark"),
        (JUG, 'formulation = "salt in water"\n', None, "formulation"),
        (JUG, 'strength = "4 lb ae/gal"\n', 7, "ingredients.strength"),
        (JUG, 'holds = "2.5 gal"\n', 12, "containers.holds"),
        (JUG, "registered = true\n", 17, "registered.registered"),
        (JUG, "looked_on = 2025-09-30\n", 17, "registered.looked_on"),
        (JUG, 'kind = "strongest mix"\n', 23, "facts.kind"),
        ("choices.toml", 'how = "cut stump"\n', 1, "treat.how"),
    ],
)
def test_missing_keys(tract, name, old, line, column):
    """A key that must be there and is not is told with the line of its table and an example."""
    tract.change(name, old, "")

    problem = next(p for p in tract.problems() if p.message == "key.missing" and p.file == name)
    assert place(problem) == ("key.missing", name, line, column)
    assert problem.expected.startswith(column.rpartition(".")[2])


@pytest.mark.parametrize(
    ("name", "old", "new", "message", "line", "column"),
    [
        ("tract.toml", '"Example Tract"', "7", "key.wrong_type", 1, "name"),
        ("tract.toml", '"Example Tract"', '" "', "key.empty", 1, "name"),
        ("tract.toml", '"Example Tract"', f'"{"x" * 201}"', "key.too_long", 1, "name"),
        ("tract.toml", '"Example Tract"', '"\\u001b[31m"', "key.odd_sign", 1, "name"),
        ("tract.toml", '"WI"', '"XX"', "tract.state", 3, "state"),
        ("tract.toml", '"America/Chicago"', '"Central time"', "tract.time_zone", 4, "time_zone"),
        ("tract.toml", 'who = "own"', 'who = "me"', "key.not_a_choice", 5, "who"),
        ("tract.toml", "invented = true", 'invented = "yes"', "key.wrong_type", 6, "invented"),
        ("tract.toml", '["rim"]', '["rimm"]', "tract.unknown_patch", 7, "kept_asked"),
        ("tract.toml", '["rim"]', '"rim"', "key.wrong_type", 7, "kept_asked"),
        ("tract.toml", '"911"', "911", "key.wrong_type", 11, "emergency.call"),
        ("tract.toml", '["non-crop"]', '["noncrop"]', "key.not_a_choice", 16, "patches.places"),
        ("tract.toml", '"0.9 ha"', '"0.9"', "key.figure", 17, "patches.area"),
        ("tract.toml", '"0.9 ha"', "0.9", "key.wrong_type", 17, "patches.area"),
        ("tract.toml", 'grazed = "no"', 'grazed = "never"', "key.not_a_choice", 20, "patches.answers.grazed"),
        ("tract.toml", '"1.5 %"', '"1,5 %"', "key.figure", 24, "patches.soil.organic_matter"),
        ("tract.toml", '"1.5 %"', '"150 %"', "key.out_of_range", 24, "patches.soil.organic_matter"),
        ("tract.toml", '["mix", "apply"]', '["mix", "spray"]', "key.not_a_choice", 32, "people.does"),
        ("tract.toml", '"24 fl oz"', '"24 oz"', "key.figure", 38, "vessels.capacity"),
        ("tract.toml", '"24 fl oz"', '"0 fl oz"', "key.out_of_range", 38, "vessels.capacity"),
        ("tract.toml", '"1/2 fl oz"', '"9 fl oz"', "measure.mark_too_big", 42, "measures.mark"),
        (JUG, '"salt in water"', '"salt"', "key.not_a_choice", 5, "formulation"),
        (JUG, '"4 lb ae/gal"', '"41 %"', "key.figure", 10, "ingredients.strength"),
        (JUG, '"4 lb ae/gal"', '"480 lb ae/gal"', "key.out_of_range", 10, "ingredients.strength"),
        (JUG, '"38 fl oz"', '"3 gal"', "jug.more_than_holds", 15, "containers.left"),
        (JUG, 'state = "WI"', 'state = "Wisconsin"', "tract.state", 18, "registered.state"),
        (JUG, "registered = true", 'registered = "yes"', "key.wrong_type", 19, "registered.registered"),
        (
            JUG,
            "looked_on = 2025-09-30",
            'looked_on = "last fall"',
            "key.not_a_day",
            21,
            "registered.looked_on",
        ),
        (JUG, '"strongest mix"', '"strongest mixture"', "key.not_a_choice", 24, "facts.kind"),
        (JUG, '"50 %"', '"half"', "key.figure", 25, "facts.says"),
        (JUG, '"50 %"', '"150 %"', "key.out_of_range", 25, "facts.says"),
        (JUG, '"50 %"', "0.5", "fact.needs_unit", 25, "facts.says"),
        (JUG, '"cut stump"', '"cut-stump"', "key.not_a_choice", 29, "facts.scope.method"),
        (JUG, '["cut stump"]', "[]", "key.empty", 29, "facts.scope.method"),
        (JUG, '["0 in", "3 in"]', '["3 in", "0 in"]', "fact.backward", 29, "facts.scope.stem"),
        (JUG, '["0 in", "3 in"]', '["3 in"]', "key.wrong_type", 29, "facts.scope.stem"),
        (JUG, '["0 in", "3 in"]', '["0", "3 in"]', "key.figure", 29, "facts.scope.stem"),
        (JUG, '"04-01"', '"04-31"', "key.not_a_day", 29, "facts.scope.dates"),
        (JUG, "method = [", "methods = [", "key.unknown", 29, "facts.scope.methods"),
        (JUG, '"wet"', '"wetland"', "key.not_a_choice", 34, "facts.of"),
        ("choices.toml", '"rim"', '"rimm"', "tract.unknown_patch", 2, "treat.patch"),
        ("choices.toml", '"tree-of-heaven"', '"ailanthus"', "choice.unknown_species", 3, "treat.species"),
        ("choices.toml", '"cut stump"', '"cut-stump"', "key.not_a_choice", 4, "treat.how"),
        ("choices.toml", '"glyphosate-4lb"', '"glyphosate"', "choice.unknown_product", 5, "treat.product"),
        ("choices.toml", '"50 %"', '"0 %"', "key.out_of_range", 6, "treat.concentration"),
        ("choices.toml", '"50 %"', '"50"', "key.figure", 6, "treat.concentration"),
        ("choices.toml", '"squirt bottle"', '"squirt botle"', "key.not_a_choice", 7, "treat.tool"),
        ("choices.toml", '"2 in"', '"2"', "key.figure", 8, "treat.ring"),
    ],
)
def test_wrong_values(tract, name, old, new, message, line, column):
    """A wrong value is told with what is wrong about it, its line and its dotted key."""
    tract.change(name, old, new)

    assert (message, name, line, column) in {place(p) for p in tract.problems()}


@pytest.mark.parametrize(
    ("name", "old", "new", "near"),
    [
        ("tract.toml", '"non-crop"', '"non crop"', "non-crop, crop"),
        ("tract.toml", '["rim"]', '["rimm"]', "rim"),
        (JUG, 'state = "WI"', 'state = "wisconsin"', "WI"),
        (JUG, 'state = "WI"', 'state = "Wisconsn"', "WI"),
        ("choices.toml", '"tree-of-heaven"', '"tree of heavn"', "tree-of-heaven (Ailanthus altissima)"),
        ("choices.toml", '"glyphosate-4lb"', '"glyphosat-4lb"', "glyphosate-4lb"),
    ],
)
def test_near_words(tract, name, old, new, near):
    """A word that is nearly right is told with the right one."""
    tract.change(name, old, new)

    assert tract.problems()[0].values["near"] == near


@pytest.mark.parametrize("code", ["wi", "WI", ""])
def test_state_in_any_case_or_none(tract, code):
    """A state may be written small, or left empty by those who do not want to say."""
    tract.change("tract.toml", 'state = "WI"', f'state = "{code}"')

    assert tract.read().tract.state == code.upper()


def test_tract_without_patches(tract):
    """A tract needs a patch, because stems stand in one."""
    tract.write("tract.toml", 'name = "Example"')

    assert ("tract.no_patches", "tract.toml", None, "patches") in {place(p) for p in tract.problems()}


def test_ids_twice(tract):
    """An id that stands twice is told with the place of the first."""
    tract.change("tract.toml", 'id = "meadow"', 'id = "rim"')

    problem = next(p for p in tract.problems() if p.message == "key.id_twice")
    assert place(problem) == ("key.id_twice", "tract.toml", 27, "patches.id")
    assert problem.values == {"id": "rim", "first_file": "tract.toml", "first_line": 14}


def test_product_id_in_two_files(tract):
    """Two product files with one id are told with the other file and its line."""
    tract.write("shelf/second.toml", (tract.path / JUG).read_text())

    problem = tract.problem()
    assert place(problem) == ("key.id_twice", "shelf/second.toml", 1, "id")
    assert problem.values == {"id": "glyphosate-4lb", "first_file": JUG, "first_line": 1}


# label facts


def fact(tract, *lines):
    """Add one label fact to the jug; its first line is line 37."""
    reading = ('read_by = "owner"', "read_on = 2025-09-30")
    own = () if any(line.startswith(("read", "proposed", "not_what")) for line in lines) else reading
    tract.write(JUG, "\n".join([_jug(tract).rstrip("\n"), "[[facts]]", *lines, *own]) + "\n")


def _jug(tract):
    return (tract.path / JUG).read_text()


@pytest.mark.parametrize(
    ("lines", "message", "column"),
    [
        (['kind = "distance to water"'], "fact.nothing_said", "facts.says"),
        (['kind = "distance to water"', 'says = "25 ft"', 'standing = "not found"'], "fact.says_and_denies",
         "facts.standing"),
        (['kind = "distance to water"', 'standing = "no limit"'], "fact.no_such_negative", "facts.standing"),
        (['kind = "distance to water"', 'standing = "not found"', 'of = "3 ft"'], "fact.of_one_only",
         "facts.of"),
        (['kind = "site"', 'says = "wet"', 'of = "wet"'], "fact.of_one_only", "facts.of"),
        (['kind = "distance to water"', 'standing = "silent"'], "key.not_a_choice", "facts.standing"),
        (['kind = "distance to water"', "says = 25"], "fact.needs_unit", "facts.says"),
        (['kind = "distance to water"', 'says = "25 gal"'], "key.figure", "facts.says"),
        (['kind = "restricted use"', 'says = "perhaps"'], "key.not_a_choice", "facts.says"),
        (['kind = "site"', "says = 3"], "key.wrong_type", "facts.says"),
        (['kind = "first aid"', 'says = ""'], "key.empty", "facts.says"),
        (['kind = "state excluded"', 'says = "Californa"'], "tract.state", "facts.says"),
        (['kind = "site"', 'says = "wet"', 'force = "shall"'], "key.not_a_choice", "facts.force"),
        (['kind = "site"', 'says = "wet"', "page = 1.5"], "key.wrong_type", "facts.page"),
        (['kind = "site"', 'says = "wet"', 'scope = "all"'], "key.wrong_type", "facts.scope"),
        (['kind = "site"', 'says = "wet"', 'scope = { role = ["boss"] }'], "key.not_a_choice",
         "facts.scope.role"),
    ],
)  # fmt: skip
def test_facts_that_say_nothing_or_two_things(tract, lines, message, column):
    """A fact that does not say one thing of its kind is told with its line."""
    fact(tract, *lines)

    problem = tract.problem()
    assert (problem.message, problem.column) == (message, column)
    assert 36 <= problem.line <= 39


@pytest.mark.parametrize(
    "lines",
    [
        ["proposed = true", 'read_by = "owner"', "read_on = 2025-09-30"],
        ['read_by = "owner"'],
        ["read_on = 2025-09-30"],
        ["proposed = false"],
        ["proposed = true", "not_what_it_says = true"],
    ],
)
def test_facts_of_which_nobody_knows_who_read_them(tract, lines):
    """A fact was read by someone on a day, or proposed, or is not what the label says: one of the three."""
    fact(tract, 'kind = "site"', 'says = "wet"', *lines)

    problem = tract.problem()
    assert place(problem) == ("fact.reading", JUG, 36, "facts")
    assert problem.values == {"kind": "site"}


@pytest.mark.parametrize(
    ("lines", "value", "reading"),
    [
        (['kind = "restricted use"', "says = true"], "yes", "read"),
        (['kind = "restricted use"', 'says = "No"'], "no", "read"),
        (['kind = "most applications"', "says = 2"], 2.0, "read"),
        (['kind = "distance to water"', 'says = "25 ft"'], pytest.approx(762.0), "read"),
        (['kind = "state excluded"', 'says = "ca"'], "CA", "read"),
        (['kind = "plant"', 'says = "bur oak"'], "Quercus macrocarpa", "read"),
        (['kind = "site"', 'says = "Wet"', "page = 7"], "wet", "read"),
        (['kind = "strongest mix"', 'standing = "no limit"'], None, "read"),
        (['kind = "site"', 'says = "wet"', "not_what_it_says = true"], "wet", "not what it says"),
        (['kind = "site"', 'says = "wet"', 'read_on = "2025-09-30"', 'read_by = "owner"'], "wet", "read"),
    ],
)
def test_facts_that_are_read(tract, lines, value, reading):
    """Each kind of fact takes its value as people write it."""
    fact(tract, *lines)

    last = tract.read().tract.shelf[0].facts[-1]
    assert (last.value, last.reading) == (value, reading)


def test_plant_on_a_label_that_nobody_knows(tract):
    """A plant on a label that the handbook does not know stays as the label has it, and is asked about."""
    fact(tract, 'kind = "plant"', 'says = "bur oaks"')

    question = tract.question()
    assert (question.message, question.line) == ("ask.fact_plant", 38)
    assert dict(question.values) == {"species": "bur oaks", "near": "bur oak (Quercus macrocarpa)"}
    assert tract.read().tract.shelf[0].facts[-1].value == "bur oaks"


# choices


def test_choice_twice(tract):
    """Two choices for the same plants are told with the line of the first, under whatever names."""
    text = (tract.path / "choices.toml").read_text()
    tract.write("choices.toml", text + text.replace("tree-of-heaven", "Ailanthus altissima"))

    problem = tract.problem()
    assert place(problem) == ("choice.twice", "choices.toml", 9, "treat")
    assert problem.values == {"patch": "rim", "species": "Ailanthus altissima", "first_line": 1}


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        ('product = "glyphosate-4lb"\n', "", "choice.needs_product"),
        ('how = "cut stump"', 'how = "leave it"', "choice.takes_no_product"),
        ('tool = "squirt bottle"', 'carrier = "undiluted"', "choice.undiluted"),
    ],
)
def test_choices_that_do_not_fit_together(tract, old, new, message):
    """A way that needs a product has one, one that takes none has none, and half is not undiluted."""
    tract.change("choices.toml", old, new)

    assert tract.problem().message == message


def test_choice_for_plants_that_are_not_there(tract):
    """A choice for plants that no stem is of is asked about."""
    tract.change("choices.toml", '"rim"', '"meadow"')

    question = tract.question()
    assert (question.message, question.line) == ("ask.choice_unused", 1)


# odd values


def test_gear_that_labels_do_not_name(tract):
    """Gear in other words than labels use would not count, so it is asked about."""
    tract.change("tract.toml", '["boots"]', '["bots"]')

    question = tract.question()
    assert (question.message, question.line) == ("ask.gear", 33)
    assert dict(question.values) == {"role": "owner", "gear": "bots", "near": "boots"}


def test_strength_that_no_liquid_has(tract):
    """A strength above that of the strongest liquids is asked about."""
    tract.change(JUG, '"4 lb ae/gal"', '"8 lb ae/gal"')

    assert tract.question().message == "ask.strong"


def test_lining_in_the_other_spelling(tract):
    """A lining that is spelled another way than the checks spell it would let a bad bottle pass: refused."""
    tract.change("tract.toml", 'capacity = "24 fl oz"', 'capacity = "24 fl oz"\nlining = "galvanized steel"')

    problem = tract.problem()
    assert place(problem) == ("key.not_a_choice", "tract.toml", 39, "vessels.lining")
    assert problem.values["near"] == "galvanised steel"


def test_what_was_counted_where_it_is_mixed_and_what_it_costs(tract):
    """Squirts, mixing place and wage are read; money that is none and an unknown tool are told with their line."""
    more = '\n[mixing_place]\nx = "12 m"\ny = "300 ft"\n'
    more += '\n[[calibrations]]\ntool = "squirt bottle"\nper_stroke = "0.8 mL"\n'
    text = (tract.path / "tract.toml").read_text()
    tract.write("tract.toml", text.replace('state = "WI"', 'state = "WI"\nwage = "18.50"') + more)
    read = tract.read().tract
    assert read.mixing_place == (12.0, pytest.approx(91.44))
    assert [(c.tool, c.ml_per_stroke) for c in read.calibrations] == [("squirt bottle", 0.8)]
    assert read.wage_cents_h == 1850
    tract.write("tract.toml", text.replace('state = "WI"', 'state = "WI"\nwage = "eighteen"') + more)
    assert place(tract.problem()) == ("money.not_understood", "tract.toml", 4, "wage")


def test_a_second_product_needs_its_share(tract):
    """A partner without a share, a share without a partner, and more than the whole are refused."""
    jug = 'product = "glyphosate-4lb"'
    text = (tract.path / "choices.toml").read_text()
    assert jug in text
    for more, message in (
        ('partner = "glyphosate-4lb"', "choice.partner"),
        ('partner_concentration = "2 %"', "choice.partner"),
        ('partner = "nothing"\npartner_concentration = "2 %"', "choice.unknown_partner"),
    ):
        tract.write("choices.toml", text.replace(jug, f"{jug}\n{more}"))
        assert message in [p.message for p in tract.problems()]
