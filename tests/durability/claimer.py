"""One of several processes on a store: claims and marks until nothing is left. Run as a program.

    claimer.py URL OWNER

Says `ready`, waits for a line, claims once and says `begun`, waits for a line, and then claims what is left; prints the
id of each row that it sent.
"""

import sys
import time
from datetime import UTC, datetime, timedelta

from core.store import outbox
from core.store.database import Database, open_database

# SQLite's lock is not fair: without a pause one process may get it every time
PAUSE_SECONDS = 0.002


def claim_all(url: str, owner: str) -> None:
    database = open_database(url)
    print("ready", flush=True)
    sys.stdin.readline()
    claim_some(database, owner)
    print("begun", flush=True)
    sys.stdin.readline()
    while claim_some(database, owner):
        time.sleep(PAUSE_SECONDS)
    database.close()


def claim_some(database: Database, owner: str) -> int:
    now = datetime.now(UTC)
    rows = outbox.claim(database, now, timedelta(minutes=1), 3, owner)
    for row in rows:
        assert outbox.sent(database, row, now, row.id)
        print(row.id)
    return len(rows)


if __name__ == "__main__":
    claim_all(sys.argv[1], sys.argv[2])
