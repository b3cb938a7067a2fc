"""The buttons that were shown, and which of them is meant by what is typed."""

import re
from collections.abc import Callable
from dataclasses import dataclass, field

from bot.reply import Button, Reply

_EDGE = re.compile(r"^\W+|\W+$")


@dataclass(frozen=True)
class Shown:
    """A message of ours that carries buttons, by its key in the channel."""

    key: str
    buttons: tuple[Button, ...]


@dataclass(frozen=True)
class Pressed:
    """A button, and the key of the message that it belongs to."""

    key: str
    button: Button


@dataclass
class Buttons:
    """All buttons on the screen, oldest message first: an old button can still be pressed, as in any chat."""

    shown: list[Shown] = field(default_factory=list)

    def show(self, key: str, reply: Reply) -> None:
        """A message was shown: remember its buttons, if it has any."""
        if reply.buttons:
            self.shown.append(Shown(key, tuple(button for row in reply.buttons for button in row)))

    def numbered(self, number: int) -> Pressed | None:
        """The n-th button of the latest message that has buttons, counted from 1."""
        latest = self.shown[-1] if self.shown else None
        if latest is None or not 1 <= number <= len(latest.buttons):
            return None
        return Pressed(latest.key, latest.buttons[number - 1])

    def labelled(self, label: str) -> Pressed | None:
        """The button that is meant by a label; None when there is none, or not only one.

        Exactly so, else but for capitals and signs at its edges, else by how it begins; each time in the
        latest message that has one.
        """
        wanted = _plain(label)
        for fits in (_exactly(label), _as_plain(wanted), _beginning(wanted)):
            for message in reversed(self.shown):
                found = [button for button in message.buttons if fits(button)]
                if found:
                    return Pressed(message.key, found[0]) if len(found) == 1 else None
        return None

    def spelled(self, text: str, key: str) -> Pressed | None:
        """The button of the message `key` whose whole label a text is, when that message has it."""
        wanted = _plain(text)
        latest = self.shown[-1] if self.shown else None
        if latest is None or latest.key != key:
            return None
        found = [button for button in latest.buttons if _as_plain(wanted)(button)]
        return Pressed(key, found[0]) if len(found) == 1 else None

    def labels(self) -> tuple[str, ...]:
        """The labels that can be pressed, those of the latest message first, each once."""
        newest_first = (button.label for message in reversed(self.shown) for button in message.buttons)
        return tuple(dict.fromkeys(newest_first))


def _plain(label: str) -> str:
    """A label without capitals, without signs at its edges and with single blanks."""
    return " ".join(_EDGE.sub("", label).casefold().split())


def _exactly(label: str) -> Callable[[Button], bool]:
    return lambda button: button.label == label


def _as_plain(wanted: str) -> Callable[[Button], bool]:
    return lambda button: bool(wanted) and _plain(button.label) == wanted


def _beginning(wanted: str) -> Callable[[Button], bool]:
    return lambda button: bool(wanted) and _plain(button.label).startswith(wanted)
