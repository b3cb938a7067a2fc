"""Everything that stands behind a channel, built once and fitted together."""

import os
import secrets
from collections.abc import Awaitable, Callable
from dataclasses import dataclass
from datetime import datetime

from bot.conversation.turns import Conversation
from bot.notify import Notify
from bot.reply import Message, Outgoing
from core.person import Person, Units
from core.reminders.delivery import Postman
from core.service import waiting
from core.service.turn import House

FAHRENHEIT_COUNTRIES = ("America/", "US/")


@dataclass(frozen=True)
class Built:
    """The house as the channels use it."""

    house: House
    conversation: Conversation
    postman: Postman[Outgoing]

    def receive(self, message: Message, now: datetime) -> bool:
        """One whole turn; see `Conversation.receive`."""
        return self.conversation.receive(message, now)

    def next_due(self) -> datetime | None:
        """When the next thing falls due."""
        return waiting.next_due(self.house)

    def close(self) -> None:
        """Let go of the store."""
        self.postman.leave()
        self.house.close()


def build(url: str, newcomer_: Person, send: Callable[[Outgoing], Awaitable[str]]) -> Built:
    """The house over a store, sending through one channel."""
    house = waiting.open_house(url)
    notify = Notify(house)
    # unlike any other process's, on this machine or another: in a container every process has the number 1
    owner = f"saltbell-{os.getpid()}-{secrets.token_hex(4)}"
    return Built(house, Conversation(house, newcomer_), Postman(house, notify.render, send, owner))


def newcomer(zone: str | None) -> Person:
    """Somebody who speaks for the first time: the zone of the house, and the units that go with it as a first guess."""
    if zone is None:
        return Person("")
    units = Units("lb", "in", "f") if zone.startswith(FAHRENHEIT_COUNTRIES) else Units()
    return Person("", zone=zone, zone_known=True, units=units)
