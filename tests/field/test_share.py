"""Phones on a private network: an authority of this computer's own, a door that opens the phone's page alone."""

import datetime
import http.client
import os
import socket
import ssl
import subprocess
import sys

import pytest

from stemward.field import files
from stemward.field.authority import NotPrivate, is_private, papers_for

NOW = datetime.datetime.now(datetime.UTC)


@pytest.mark.parametrize(
    ("address", "private"),
    [("192.168.1.20", True), ("10.0.0.1", True), ("172.31.0.9", True), ("172.32.0.9", False), ("8.8.8.8", False),
     ("fd00::1", True), ("2001:db8::1", False), ("name.example", False), ("", False)],
)  # fmt: skip
def test_private_networks(address, private):
    """RFC 1918 and 4193; nothing else is vouched for."""
    assert is_private(address) is private


def test_the_authority_is_made_once_and_its_key_is_its_owners(tmp_path):
    """A second start has the same one; it cannot vouch outside of private networks."""
    first, second = papers_for(tmp_path, "127.0.0.1", NOW), papers_for(tmp_path, "192.168.7.7", NOW)
    assert first.fingerprint == second.fingerprint and len(first.fingerprint) == 95
    for path in (first.key, tmp_path / "share" / "authority.key"):
        assert path.stat().st_mode & 0o077 == 0
    with pytest.raises(NotPrivate):
        papers_for(tmp_path, "8.8.8.8", NOW)
    later = papers_for(tmp_path, "127.0.0.1", NOW + datetime.timedelta(days=3600))
    assert later.fingerprint != first.fingerprint


@pytest.fixture
def shared(tmp_path):
    """A notebook that is shared on the loopback address: its phones' port and its folder."""
    env = {**os.environ, "PYTHONUNBUFFERED": "1"}
    for name in ("DATABASE_URL", "DJANGO_SETTINGS_MODULE", "STEMWARD_HOSTS"):
        env.pop(name, None)
    process = subprocess.Popen(
        [sys.executable, "-m", "stemward.cli", "share", "--data", str(tmp_path), "--no-browser", "--address", "127.0.0.1",
         "--port", "0"],
        stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, env=env,
    )  # fmt: skip
    said = [process.stdout.readline() for _ in range(2)]
    yield int(said[0].partition("https://127.0.0.1:")[2].partition("/")[0]), tmp_path, said[1]
    process.terminate()
    process.wait(20)
    process.stdout.close()
    process.stderr.close()


def asked(port, path, folder, **headers):
    """Status and body, the certificate checked against the authority alone."""
    context = ssl.create_default_context(cafile=str(folder / "share" / "authority.crt"))
    connection = http.client.HTTPSConnection("127.0.0.1", port, context=context, timeout=20)
    connection.request("GET", path, headers=headers)
    answer = connection.getresponse()
    raw = answer.read()
    connection.close()
    return answer.status, raw


def test_the_door_opens_the_phones_page_and_nothing_else(shared):
    """Who trusts the authority gets the page; land, settings and links stay closed, with a cookie as well."""
    port, folder, said = shared
    status, raw = asked(port, "/phone/", folder)
    assert status == 200 and b"EMERGENCY" in raw
    assert asked(port, "/phone/authority.crt", folder)[1] == (folder / "share" / "authority.crt").read_bytes()
    for path in ("/", "/settings", "/static/web/site.css", "/enter/x", "/alive", "/land/x/"):
        assert asked(port, path, folder, Cookie="stemward_key=x")[0] == 403
    assert asked(port, "/phone/plan", folder)[0] == 403
    assert asked(port, "/phone/nothing.js", folder)[0] == 404
    assert said.strip().endswith(papers_for(folder, "127.0.0.1", NOW).fingerprint)
    with pytest.raises(ssl.SSLError):
        http.client.HTTPSConnection("127.0.0.1", port, timeout=20).request("GET", "/phone/")


def refused(tmp_path, *arguments):
    """What is said on standard error, with status 2."""
    env = {key: value for key, value in os.environ.items() if key not in ("DATABASE_URL", "DJANGO_SETTINGS_MODULE")}
    done = subprocess.run(
        [sys.executable, "-m", "stemward.cli", "share", "--data", str(tmp_path), "--no-browser", *arguments],
        capture_output=True, text=True, env=env, check=False, timeout=60,
    )  # fmt: skip
    assert done.returncode == 2
    return done.stderr


def test_what_cannot_be_shared_is_said(tmp_path):
    """An address of the wide world, a port that is taken."""
    assert "no address of a private network" in refused(tmp_path, "--address", "8.8.8.8")
    with socket.create_server(("127.0.0.1", 0)) as taken:
        said = refused(tmp_path, "--address", "127.0.0.1", "--port", str(taken.getsockname()[1]))
    assert "cannot be let in" in said


def test_the_page_is_written_into_a_folder(tmp_path):
    """All files, the worker with its version and every other file; a changed file is another version."""
    files.write_page(tmp_path)
    worker = (tmp_path / "sw.js").read_text()
    assert files.version() in worker and "as-written" not in worker
    for name in files.names():
        assert (tmp_path / name).exists()
        assert name in ("sw.js", "index.html") or f'"{name}"' in worker
