"""Message in, Reply out, and the Channel protocol: the one seam between the talk and its channels."""

from collections.abc import Mapping
from dataclasses import asdict, dataclass, field, fields, replace
from datetime import datetime
from math import isfinite
from typing import Any, Literal, Protocol

Kind = Literal["reply", "reminder", "alert"]
Subject = Literal["cook", "cure", "chill"]
Facts = Mapping[str, Any]  # plain data: numbers, text, lists of such; the unit stands in the name


@dataclass(frozen=True)
class Message:
    """What a person sent, whatever the channel.

    `key` is unique for each delivery of the channel (the update's id): the same key twice is the same
    message twice. `ref` is the message as the channel knows it ("chat:number"); `edits` is the ref of the
    earlier message that this one edits, `answers` that of the message of ours that this replies to.
    `said_at` is when the person sent it, which may be long before it arrived. `pressed` is the payload of
    a button. `other` names what cannot be read: "sticker", "voice", "photo", ….
    """

    key: str
    chat: str
    person: str
    name: str
    said_at: datetime
    text: str = ""
    pressed: str | None = None
    edits: str | None = None
    answers: str | None = None
    other: str | None = None
    language: str | None = None
    in_group: bool = False
    ref: str = ""

    def keepable(self) -> "Message":
        """The same without what no store takes: a zero is left out, half a character becomes the sign for one."""
        pressed = None if self.pressed is None else _keepable(self.pressed)
        return replace(self, name=_keepable(self.name), text=_keepable(self.text), pressed=pressed)


def _keepable(text: str) -> str:
    return text.encode("utf-16", "surrogatepass").decode("utf-16", "replace").replace("\0", "")


@dataclass(frozen=True)
class Button:
    """A label that a person reads, and the payload that comes back when it is tapped (64 bytes at most)."""

    label: str
    payload: str


@dataclass(frozen=True)
class Picture:
    """A picture that was drawn: PNG bytes and the sentence that says the same."""

    png: bytes
    says: str
    name: str


@dataclass(frozen=True)
class PictureWanted:
    """A picture to be drawn when the reply goes out: small enough to be stored with it."""

    subject: Subject
    batch: str


@dataclass(frozen=True)
class Document:
    """A file that was made: its bytes, its name with the ending, and what is said where a channel cannot take it."""

    content: bytes
    name: str
    instead: str


@dataclass(frozen=True)
class DocumentWanted:
    """A file to be made when the reply goes out: the record of a batch in a form, or what is kept of a person."""

    form: str  # "pdf", "html", "csv" or "json"
    batch: str | None = None
    person: str | None = None


@dataclass(frozen=True)
class Reply:
    """What the bot says: one idea, its first 90 characters carry the action."""

    text: str
    buttons: tuple[tuple[Button, ...], ...] = ()
    picture: PictureWanted | None = None
    document: DocumentWanted | None = None
    facts: Facts = field(default_factory=dict)
    kind: Kind = "reply"
    quiet: bool = False
    to: str | None = None  # another person or chat; None is who spoke
    about: str | None = None  # the batch that it is about, so that an answer to it finds the batch
    invite: str | None = None  # the code of an invitation, for a channel that can make a link of it
    language: str = "en"  # in which it is said, so that its picture and its repeat are too


@dataclass(frozen=True)
class Outgoing:
    """A reply on its way: what a channel is handed. What is `piercing` goes before all that waits for its turn.

    `until` is when it stops being ours to send (aware UTC): from then on another process may have it in hand.
    """

    id: str
    chat: str
    at: datetime
    reply: Reply
    picture: Picture | None = None
    repeat: bool = False
    answering: str | None = None
    document: Document | None = None
    piercing: bool = False
    until: datetime | None = None


def to_body(reply: Reply) -> dict[str, Any]:
    """The reply as plain data, to be kept until it is sent; a time that never comes is a fact of None."""
    told = {k: None if isinstance(fact, float) and not isfinite(fact) else fact for k, fact in reply.facts.items()}
    whole = {one.name: getattr(reply, one.name) for one in fields(reply)} | {"facts": told}
    parts = {"picture": reply.picture and asdict(reply.picture), "document": reply.document and asdict(reply.document)}
    return whole | parts | {"buttons": tuple(tuple(asdict(button) for button in row) for row in reply.buttons)}


def from_body(body: dict[str, Any]) -> Reply:
    """The reply that was kept."""
    rows = tuple(tuple(Button(**b) for b in row) for row in body["buttons"])
    picture = PictureWanted(**body["picture"]) if body["picture"] else None
    document = DocumentWanted(**body["document"]) if body.get("document") else None  # older rows know of none
    return Reply(**{**body, "buttons": rows, "picture": picture, "document": document})


class Channel(Protocol):
    """A way to reach people. Implemented by Telegram, by the terminal, and by the tests' collector."""

    async def send(self, outgoing: Outgoing) -> str:
        """Deliver one reply; its key in the channel. Raises NotDelivered."""
        ...
