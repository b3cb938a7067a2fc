"""The process dies at random moments: nothing that was said or promised is lost, nothing is kept twice."""

import os
import random
import re
import shutil
import signal
import sqlite3
import subprocess
import sys
import time
from collections import Counter
from itertools import takewhile
from pathlib import Path

import pytest

from core.store import batches
from core.store.database import open_database

WORKER = Path(__file__).with_name("worker.py")
KILLS = int(os.environ.get("SALTBELL_KILLS", "8"))
ROOT = Path(__file__).parents[2]

pytestmark = pytest.mark.durability


def live(folder: Path, seconds: float) -> subprocess.Popen[str]:
    """A life of the worker, once it has begun to work."""
    before = lines(folder / "lives")
    life = subprocess.Popen(
        [sys.executable, str(WORKER), str(folder), str(seconds)],
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        stderr=subprocess.PIPE,
        text=True,
    )
    while len(lines(folder / "lives")) == len(before):
        assert life.poll() is None, life.stderr and life.stderr.read()
        time.sleep(0.005)
    return life


def end(life: subprocess.Popen[str]) -> None:
    life.kill()
    life.communicate()


def until(folder: Path, count: int) -> None:
    """Wait until so many messages were confirmed; a busy machine may not come to it in any given time."""
    while len(lines(folder / "confirmed")) < count:
        time.sleep(0.005)


def lines(file: Path) -> list[str]:
    return file.read_text().splitlines() if file.exists() else []


def kept(database: Path) -> dict[str, list[str]]:
    """The messages in the log of each chat, in order."""
    store = open_database(f"sqlite:///{database}")
    with store.reading() as tx:
        found = {f"chat{n}": [e.message for e in batches.events(tx, f"chat{n}")] for n in range(5)}
        numbers = [[e.number for e in batches.events(tx, chat)] for chat in found]
    store.close()
    assert numbers == [list(range(1, len(each) + 1)) for each in numbers]
    return found


def expected(count: int) -> dict[str, list[str]]:
    return {f"chat{n}": [f"update/{m}" for m in range(count) if m % 5 == n] for n in range(5)}


def test_kills_lose_nothing_and_repeat_one_message_each(tmp_path: Path) -> None:
    """Every message is kept once, every reply and reminder is sent, and at most one is repeated for each kill."""
    for number in range(KILLS):
        life = live(tmp_path, 60)
        time.sleep(random.uniform(0.02, 0.5))
        until(tmp_path, 2 * number + 1)
        end(life)
    last = live(tmp_path, 0.2)
    assert last.communicate() == (None, "")

    count = len(lines(tmp_path / "confirmed"))
    assert count > KILLS
    assert kept(tmp_path / "cellar.db") == expected(count)

    sent = Counter(re.sub(" repeat$", "", line) for line in lines(tmp_path / "street"))
    promised = {f"chat{n % 5} {sort} {n}" for n in range(count) for sort in ("reply", "reminder")}
    assert set(sent) == promised
    assert max(sent.values()) <= 1 + KILLS
    assert sum(sent.values()) - len(sent) <= KILLS
    marked = {line.removesuffix(" repeat") for line in lines(tmp_path / "street") if line.endswith(" repeat")}
    assert {words for words, times in sent.items() if times > 1} <= marked


def test_replies_of_a_chat_keep_their_order_over_kills(tmp_path: Path) -> None:
    """Each chat gets its replies in the order of its messages, first deliveries counted."""
    for _ in range(3):
        life = live(tmp_path, 60)
        time.sleep(random.uniform(0.1, 0.4))
        end(life)
    live(tmp_path, 0.1).communicate()
    for chat in range(5):
        said = [line.removesuffix(" repeat") for line in lines(tmp_path / "street") if f"chat{chat} reply" in line]
        first = [int(line.split()[-1]) for line in dict.fromkeys(said)]
        assert first == sorted(first)


def test_a_frozen_moment_opens_clean(tmp_path: Path) -> None:
    """File and WAL as they are at any moment of work are a whole store, with everything that was confirmed by then."""
    life = live(tmp_path, 60)
    for moment in range(10):
        time.sleep(random.uniform(0.01, 0.1))
        life.send_signal(signal.SIGSTOP)
        confirmed = len(lines(tmp_path / "confirmed"))
        copy = freeze(tmp_path, f"moment{moment}")
        life.send_signal(signal.SIGCONT)
        assert check(copy) == "ok"
        found = kept(copy)
        count = sum(map(len, found.values()))
        assert confirmed <= count <= confirmed + 1
        assert found == expected(count)
    end(life)


def test_a_log_cut_off_anywhere_opens_clean(tmp_path: Path) -> None:
    """A power cut that loses the end of the WAL, at any byte, loses whole turns from the end and tears none."""
    life = live(tmp_path, 60)
    seen: set[int] = set()
    for moment in range(6):  # at several moments: just after a checkpoint, the log holds little to cut
        until(tmp_path, len(lines(tmp_path / "confirmed")) + 8)
        life.send_signal(signal.SIGSTOP)
        whole = freeze(tmp_path, f"whole{moment}")
        life.send_signal(signal.SIGCONT)
        wal = Path(f"{whole}-wal").read_bytes()
        counts = []
        for size in sorted(random.randrange(len(wal)) for _ in range(8)):
            copy = freeze(whole.parent, "cut")
            Path(f"{copy}-wal").write_bytes(wal[:size])
            if not lines_of_tables(copy):
                continue  # before the tables were made
            assert check(copy) == "ok"
            found = kept(copy)
            counts.append(sum(map(len, found.values())))
            assert found == expected(counts[-1])
        assert counts == sorted(counts)
        seen |= set(counts)
    end(life)
    assert len(seen) > 3


def test_two_processes_never_send_the_same(tmp_path: Path) -> None:
    """Two processes on one store, neither killed: every reply and reminder goes out once.

    Each has claimed something before either goes on: how quick they are is another matter.
    """
    live(tmp_path, 0.3).communicate()
    store = f"sqlite:///{tmp_path / 'cellar.db'}"
    again = sqlite3.connect(tmp_path / "cellar.db")
    again.execute("UPDATE outgoing SET state = 'waiting', owner = NULL WHERE sort = 'reminder'")
    again.execute("UPDATE outgoing SET free_at = due_at")
    waiting = 0
    while waiting < 200:
        again.execute(
            "INSERT INTO outgoing (chat, sort, made_at, due_at, free_at, state)"
            " SELECT chat, 'reminder', made_at, due_at, due_at, 'waiting' FROM outgoing WHERE sort = 'reminder'"
        )
        (waiting,) = again.execute("SELECT count(*) FROM outgoing WHERE state = 'waiting'").fetchone()
    again.commit()
    again.close()
    processes = [
        subprocess.Popen(
            [sys.executable, str(WORKER.with_name("claimer.py")), store, f"owner{n}"],
            env={**os.environ, "PYTHONPATH": str(ROOT)},
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
        )
        for n in range(2)
    ]
    got: list[list[str]] = [[], []]
    for word in ("ready", "begun"):  # neither begins before both can, nor goes on before both have begun
        for ids, process in zip(got, processes, strict=True):
            ids.extend(heard(process, word))
        for process in processes:
            assert process.stdin is not None
            process.stdin.write("go\n")
            process.stdin.flush()
    assert all(got), "each has claimed something"
    for ids, process in zip(got, processes, strict=True):
        ids.extend(process.communicate()[0].split())
    assert [process.returncode for process in processes] == [0, 0]
    assert len(got[0]) + len(got[1]) == len({*got[0], *got[1]}) == waiting


def heard(process: subprocess.Popen[str], word: str) -> list[str]:
    """What a process says before a word."""
    assert process.stdout is not None
    said = iter(process.stdout.readline, "")  # to its end, if it breaks
    return [line.strip() for line in takewhile(lambda line: line != f"{word}\n", said)]


def freeze(folder: Path, name: str) -> Path:
    (folder / name).mkdir(exist_ok=True)
    copy = folder / name / "cellar.db"
    for suffix in ("", "-wal"):
        shutil.copyfile(f"{folder / 'cellar.db'}{suffix}", f"{copy}{suffix}")
    Path(f"{copy}-shm").unlink(missing_ok=True)
    return copy


def check(file: Path) -> str:
    store = sqlite3.connect(file)
    (found,) = store.execute("PRAGMA integrity_check").fetchone()
    store.close()
    return str(found)


def lines_of_tables(file: Path) -> int:
    store = sqlite3.connect(file)
    (found,) = store.execute("SELECT count(*) FROM sqlite_master WHERE name = 'outgoing'").fetchone()
    store.close()
    return int(found)
