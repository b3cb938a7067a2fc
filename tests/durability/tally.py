"""What a long run of kills has shown so far, in a file after each kill: one that is broken off counts too.

The file is `saltbell-kills-WAY.txt`, in SALTBELL_KILLS_FOLDER or where temporary files are.
"""

import os
import tempfile
import time
from pathlib import Path


class Tally:
    """The kills of one way in which the bot lives. `kills` is how many it shall be."""

    def __init__(self, way: str, kills: int) -> None:
        self._way, self._kills = way, kills
        self._began = time.monotonic()
        self.file = Path(os.environ.get("SALTBELL_KILLS_FOLDER", tempfile.gettempdir())) / f"saltbell-kills-{way}.txt"

    def after(self, done: int, **figures: object) -> str:
        """Keep what was counted after so many kills, and how long the rest will take; the line that says so."""
        took = (time.monotonic() - self._began) / 60.0
        left = took / done * (self._kills - done)
        counted = ", ".join(f"{name.replace('_', ' ')} {value}" for name, value in figures.items())
        line = f"{self._way}: {done} of {self._kills} kills, {counted}; {took:.1f} min, some {left:.0f} min to go"
        self.file.write_text(line + "\n", "utf-8")
        if done in (1, self._kills) or done % 25 == 0:
            print(f"\n{line}", flush=True)
        return line
