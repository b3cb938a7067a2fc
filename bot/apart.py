"""What needs much to be made is made apart: in a process of its own, which ends with it.

A picture loads 60 MB of drawing code and a PDF 35 MB, and neither is ever given back. So the bot stays as small as it
was, and whatever befalls the other process (no memory, a crash, a hang) costs the file and nothing else.
"""

import logging
import pickle
import subprocess
import sys
import threading
from pathlib import Path
from pkgutil import resolve_name
from typing import Final

from bot.logs import fault

PATIENCE: Final = 30.0  # s; it takes one where a core is free, and the outbox's lease is longer
ROOT: Final = Path(__file__).parents[1]  # where the other process finds this house, wherever this one was started

log = logging.getLogger(__name__)
# as large as one at a time, however many want one
_ONE_AT_A_TIME: Final = threading.Lock()


class NotMade(Exception):
    """The other process broke off, or took too long."""


def apart(work: str, *given: object) -> bytes:
    """What a function gives for plain data: bytes, made in a process of its own.

    `work` names the function as "module:name", so that only the other process loads it. Raises NotMade.
    """
    command = (sys.executable, "-W", "ignore", "-m", __name__)
    told = pickle.dumps((work, given))
    try:
        with _ONE_AT_A_TIME:
            ended = subprocess.run(command, input=told, capture_output=True, timeout=PATIENCE, cwd=ROOT, check=False)  # noqa: S603 - ours
    except subprocess.TimeoutExpired:
        log.error("%s took longer than %.0f s apart", work, PATIENCE)
        raise NotMade from None
    if ended.returncode != 0:
        log.error("%s broke off apart (%s): %s", work, ended.returncode, ended.stderr.decode(errors="replace"))
        raise NotMade
    return ended.stdout


def _work() -> int:
    """The other process: the work in by the standard input, what it made out by the standard output."""
    try:
        work, given = pickle.load(sys.stdin.buffer)  # noqa: S301 - from the process that started this one
        sys.stdout.buffer.write(resolve_name(work)(*given))
    except Exception:
        sys.stderr.write(fault(sys.exc_info()))  # without its words, which may quote a message
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(_work())
