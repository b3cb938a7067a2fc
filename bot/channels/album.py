"""Where a terminal, which cannot show a picture or a document, leaves it instead."""

import re
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path, PurePath

from bot.reply import Document, Picture

_UNFIT = re.compile(r"[^\w.-]+")


@dataclass(frozen=True)
class Album:
    """A folder of pictures and documents, made when the first one comes."""

    folder: Path

    def keep(self, found: Picture | Document, at: datetime) -> Path | None:
        """Save one under its time and name; None when the folder cannot take it.

        The same one at the same time is one file, however often it is sent; another one never overwrites it.
        """
        content, name = (found.png, found.name) if isinstance(found, Picture) else (found.content, found.name)
        ending = ".png" if isinstance(found, Picture) else PurePath(name).suffix
        stem = _UNFIT.sub("-", name.removesuffix(ending)).strip("-.") or "picture"
        try:
            self.folder.mkdir(parents=True, exist_ok=True)
            path = self._free(f"{at:%Y-%m-%d-%H%M%S}-{stem}", ending, content)
            path.write_bytes(content)
        except OSError:
            return None
        return path

    def _free(self, stem: str, ending: str, content: bytes) -> Path:
        """The first path of a stem that is free, or holds this very content."""
        path, copies = self.folder / f"{stem}{ending}", 1
        while path.exists() and path.read_bytes() != content:
            copies += 1
            path = self.folder / f"{stem}-{copies}{ending}"
        return path
