"""Tables that only grow: the database itself refuses to change or delete what happened."""

from typing import Any

APPEND_ONLY = ("notebook_entry", "notebook_change")

SQLITE = """CREATE TRIGGER IF NOT EXISTS {table}_no_{verb} BEFORE {event} ON {table}
BEGIN SELECT RAISE(ABORT, 'append-only'); END"""

POSTGRES_FUNCTION = """CREATE OR REPLACE FUNCTION notebook_append_only() RETURNS trigger AS
$$ BEGIN RAISE EXCEPTION 'append-only' USING ERRCODE = 'integrity_constraint_violation'; END $$ LANGUAGE plpgsql"""
POSTGRES = """CREATE OR REPLACE TRIGGER {table}_only_grows BEFORE UPDATE OR DELETE ON {table}
FOR EACH ROW EXECUTE FUNCTION notebook_append_only()"""


def make_guards(connection: Any) -> None:
    """Make the triggers of a database that has the tables; those that are there stay."""
    tables = set(connection.introspection.table_names())
    with connection.cursor() as cursor:
        if connection.vendor == "postgresql":
            cursor.execute(POSTGRES_FUNCTION)
        for table in (name for name in APPEND_ONLY if name in tables):
            if connection.vendor == "postgresql":
                cursor.execute(POSTGRES.format(table=table))
                continue
            for verb, event in (("change", "UPDATE"), ("delete", "DELETE")):
                cursor.execute(SQLITE.format(table=table, verb=verb, event=event))
