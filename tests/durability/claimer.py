"""One of several processes on a store: claims and marks until nothing is left. Run as a program.

    claimer.py URL OWNER

Says `ready`, waits for a line, then prints the id of each row that it sent.
"""

import sys
import time
from datetime import UTC, datetime, timedelta

from core.store import outbox
from core.store.database import open_database

# SQLite's lock is not fair: without a pause one process may get it every time
PAUSE_SECONDS = 0.002


def claim_all(url: str, owner: str) -> None:
    database = open_database(url)
    print("ready", flush=True)
    sys.stdin.readline()
    now = datetime.now(UTC)
    while rows := outbox.claim(database, now, timedelta(minutes=1), 3, owner):
        for row in rows:
            assert outbox.sent(database, row, now, row.id)
            print(row.id)
        time.sleep(PAUSE_SECONDS)
    database.close()


if __name__ == "__main__":
    claim_all(sys.argv[1], sys.argv[2])
