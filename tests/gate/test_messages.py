"""Every message is in the table, with exactly the values it is given."""

import ast
import re
from pathlib import Path

import stemward.gate
from stemward.gate.problems import MESSAGES

ROOM = Path(stemward.gate.__file__).parent
PLACE = {"file", "line", "column", "expected", "key"}
CALLS = {"add", "ask", "_add", "_once", "Problem", "FigureError"}


def calls():
    """Each call that makes a message: file, message id, names of the values given."""
    for path in sorted(ROOM.rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text())):
            if not isinstance(node, ast.Call):
                continue
            name = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
            ids = [a.value for a in node.args if isinstance(a, ast.Constant) and a.value in MESSAGES]
            if name in CALLS and ids:
                yield path.name, ids[0], node


def test_each_message_has_the_values_of_its_table():
    """Where values are named at the call, they are those of the table."""
    checked = set()
    for file, message, node in calls():
        names = [keyword.arg for keyword in node.keywords if keyword.arg not in PLACE]
        if None in names or message.startswith("cell.") or node.func.__class__ is ast.Name:
            continue
        assert set(names) == set(MESSAGES[message]), (file, message, names)
        checked.add(message)
    assert len(checked) > 60


def test_each_message_is_used():
    """The table holds no message that nothing makes, and every id that looks like one is in the table."""
    made = {
        node.value
        for path in ROOM.rglob("*.py")
        if path.name != "problems.py"
        for node in ast.walk(ast.parse(path.read_text()))
        if isinstance(node, ast.Constant) and isinstance(node.value, str)
    }
    assert set(MESSAGES) - made == {"folder.more", "ask.more"}
    heads = {message.partition(".")[0] for message in MESSAGES}
    files = {"tract.toml", "stems.csv", "plots.csv", "tract.gpkg"}
    like = {m for m in made if re.fullmatch(r"[a-z]+[.][a-z_0-9]+", m) and m.partition(".")[0] in heads}
    assert like - set(MESSAGES) == files
