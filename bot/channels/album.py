"""Where a terminal, which cannot show a picture, leaves it instead."""

import re
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from bot.reply import Picture

_UNFIT = re.compile(r"[^\w.-]+")


@dataclass(frozen=True)
class Album:
    """A folder of pictures, made when the first one comes."""

    folder: Path

    def keep(self, picture: Picture, at: datetime) -> Path | None:
        """Save a picture under its time and name; None when the folder cannot take it.

        The same picture at the same time is one file, however often it is sent; another one never
        overwrites it.
        """
        name = _UNFIT.sub("-", picture.name.removesuffix(".png")).strip("-.") or "picture"
        try:
            self.folder.mkdir(parents=True, exist_ok=True)
            path = self._free(f"{at:%Y-%m-%d-%H%M%S}-{name}", picture.png)
            path.write_bytes(picture.png)
        except OSError:
            return None
        return path

    def _free(self, stem: str, png: bytes) -> Path:
        """The first path of a stem that is free, or holds this very picture."""
        path, copies = self.folder / f"{stem}.png", 1
        while path.exists() and path.read_bytes() != png:
            copies += 1
            path = self.folder / f"{stem}-{copies}.png"
        return path
