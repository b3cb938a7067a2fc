"""A reply as calls of the Bot API, and the API's troubles as NotDelivered."""

import logging
from collections import OrderedDict
from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import timedelta
from typing import Any

import httpx
import telegram as api
from telegram import error

from bot.channels.telegram.account import Flooded, Garbled, ServerTrouble, Wire
from bot.channels.telegram.circuit import Circuit
from bot.channels.telegram.pacer import Pacer
from bot.channels.telegram.splitting import CAPTION_LIMIT, length, split
from bot.channels.telegram.traffic import is_group
from bot.channels.telegram.updates import Me, ref
from bot.reply import Button, Document, Outgoing, Picture
from core.errors import NotDelivered

log = logging.getLogger(__name__)

PAYLOAD_LIMIT = 64  # bytes; Bot API, InlineKeyboardButton.callback_data
UPLOAD_LIMIT = {Picture: 10_000_000, Document: 50_000_000}  # bytes; Bot API, sendPhoto (10 MB), sendDocument (50 MB)
UNFINISHED_REMEMBERED = 1000
FLOODED_CHATS = 3  # so many silenced one after another: it is the whole account that is too fast; judgement
TOKEN_PAUSE = timedelta(minutes=5)  # a refused token is the keeper's to mend; what waits is not given up
PAUSE_AT_THE_END = timedelta(seconds=10)  # the next process sends it
UNCERTAIN_STATUS = (502, 504)  # a gateway gave up waiting: what stands behind it may have done its work
CHAT_GONE = ("chat not found", "user not found", "peer_id_invalid", "chat was deactivated", "group chat was deleted",
             "not enough rights", "have no rights", "chat_write_forbidden")  # fmt: skip
# the request never left, or never in a form that can be acted on
NOT_SENT = (httpx.ConnectError, httpx.ConnectTimeout, httpx.PoolTimeout, httpx.ProxyError, httpx.UnsupportedProtocol)


@dataclass(frozen=True)
class Part:
    """One message of those that make up a reply."""

    text: str
    enclosed: Picture | Document | None = None
    buttons: tuple[tuple[Button, ...], ...] = ()


class Sender:
    """Sends what the house says. A reply of several parts goes on where it was broken off."""

    def __init__(self, wire: Wire, pacer: Pacer, circuit: Circuit, in_time: Callable[[Outgoing], bool]) -> None:
        self._wire = wire
        self._pacer = pacer
        self._circuit = circuit
        self._in_time = in_time
        self._unfinished: OrderedDict[str, int] = OrderedDict()
        self._flooded: set[str] = set()  # chats that were silenced since the API took something
        self._closed = False

    def close(self) -> None:
        """Send nothing more."""
        self._closed = True

    def marked(self, reply: str) -> None:
        """What was sent of this reply is marked in the outbox: the next may leave."""
        self._pacer.marked(reply)

    def shared_by(self, processes: int) -> None:
        """So many processes send with this account."""
        self._pacer.shared_by(processes)

    async def send(self, outgoing: Outgoing) -> str:
        """Deliver one reply; the name of its last message, which carries the buttons. Raises NotDelivered."""
        parts = parts_of(outgoing)
        if not parts:
            raise NotDelivered(after=None)
        key = ""
        for done in range(self._unfinished.pop(outgoing.id, 0), len(parts)):
            try:
                key = await self._send_whole(outgoing, parts[done])
            except BaseException:
                self._remember(outgoing.id, done)
                raise
        return key

    def _remember(self, reply: str, done: int) -> None:
        if done:
            self._unfinished[reply] = done
        if len(self._unfinished) > UNFINISHED_REMEMBERED:
            self._unfinished.popitem(last=False)

    async def _send_whole(self, outgoing: Outgoing, part: Part) -> str:
        """One part; where what it encloses is too large or refused, its words go without it and say what to do."""
        if part.enclosed is None:
            return await self._send_part(outgoing, part)
        if size(part.enclosed) <= UPLOAD_LIMIT[type(part.enclosed)]:
            try:
                return await self._send_part(outgoing, part)
            except NotDelivered as refused:
                if refused.after is not None or refused.chat_gone or refused.moved_to is not None:
                    raise
        log.error("a file was left out: it is too large, or it was refused")
        return await self._send_part(outgoing, without(part))

    async def _send_part(self, outgoing: Outgoing, part: Part) -> str:
        urgent = outgoing.reply.kind != "reminder"
        of = None if outgoing.until is None else outgoing.id  # what is in no outbox is never marked
        async with self._pacer.turn(outgoing.chat, urgent=urgent, of=of, piercing=outgoing.piercing):
            if self._closed:
                raise NotDelivered(after=PAUSE_AT_THE_END)
            if not self._in_time(outgoing):
                raise NotDelivered(after=timedelta(0), paced=True)  # it is claimed anew, by us or by another
            if (stay_away := self._circuit.wait()) is not None:
                # who waits for a reply, or for what breaks the quiet hours, has it as soon as the API is back
                raise NotDelivered(after=stay_away, paced=urgent or outgoing.piercing)
            began = self._circuit.begins()
            try:
                sent = await self._call(outgoing, part)
            except error.TelegramError as trouble:
                refused = self._refused(trouble, outgoing.chat)
                if refused is not None:
                    self._circuit.works()
                    self._mind_flood(trouble, outgoing.chat)
                    raise refused from trouble
                raise NotDelivered(self._circuit.failed(began), uncertain=may_have_arrived(trouble)) from trouble
            except Exception as oddity:  # an answer of a shape that nobody expects: it may have arrived
                raise NotDelivered(self._circuit.failed(began), uncertain=True) from oddity
        self._circuit.works()
        self._flooded.clear()
        return ref(sent.chat_id, sent.message_id)

    def _mind_flood(self, trouble: error.TelegramError, chat: str) -> None:
        """Be silent everywhere where the API silences one chat after another: each further call makes it longer."""
        if isinstance(trouble, Flooded):
            self._flooded.add(chat)
            if len(self._flooded) >= FLOODED_CHATS:
                self._circuit.shut(trouble.seconds)

    async def _call(self, outgoing: Outgoing, part: Part) -> api.Message:
        common: dict[str, Any] = {
            "chat_id": outgoing.chat,
            "disable_notification": outgoing.reply.quiet or None,
            "reply_markup": keyboard(part.buttons),
            "reply_parameters": answering(outgoing),
        }
        match part.enclosed:
            case Picture(png, _, name):
                return await self._wire.send_photo(photo=png, filename=name, caption=part.text or None, **common)
            case Document(content, name, _):
                common |= {"filename": name, "caption": part.text or None, "disable_content_type_detection": True}
                return await self._wire.send_document(document=content, **common)
        return await self._wire.send_message(
            text=part.text, link_preview_options=api.LinkPreviewOptions(is_disabled=True), **common
        )

    def _refused(self, trouble: error.TelegramError, chat: str) -> NotDelivered | None:
        """What the API said, as what the outbox should do about it; None where it did not get to say anything."""
        match trouble:
            case Flooded():
                self._pacer.traffic.halt(chat, trouble.seconds)
                return NotDelivered(after=timedelta(seconds=trouble.seconds))
            case error.ChatMigrated():
                return NotDelivered(after=timedelta(0), moved_to=str(trouble.new_chat_id))
            case error.Forbidden():
                return NotDelivered(after=None, chat_gone=True)
            case error.InvalidToken():
                log.critical("the Bot API refuses the token: nothing is delivered until it is replaced")
                return NotDelivered(after=TOKEN_PAUSE)
            case error.BadRequest():
                gone = any(words in trouble.message.lower() for words in CHAT_GONE)
                log.error("a message was refused (400)%s", ": the chat is gone" if gone else "")
                return NotDelivered(after=None, chat_gone=gone)
        return None


def may_have_arrived(trouble: error.TelegramError) -> bool:
    """Whether a message may have reached its chat although the call failed."""
    if isinstance(trouble, ServerTrouble):
        return trouble.status in UNCERTAIN_STATUS
    if isinstance(trouble, Garbled):
        return True
    return isinstance(trouble, error.NetworkError) and not isinstance(trouble.__cause__, NOT_SENT)


def linked(outgoing: Outgoing, me: Me) -> Outgoing:
    """An invitation with its deep link (Bot API, "Deep linking"): a tap on it opens the bot and says the code."""
    link = f"https://t.me/{me.username}?start={outgoing.reply.invite}"
    return replace(outgoing, reply=replace(outgoing.reply, text=f"{outgoing.reply.text}\n{link}"))


def parts_of(outgoing: Outgoing) -> list[Part]:
    """The messages that a reply is sent as: what it encloses first, the buttons under the last."""
    text, picture = outgoing.reply.text, outgoing.picture
    parts: list[Part] = []
    if outgoing.document is not None:
        caption = text.strip() if length(text.strip()) <= CAPTION_LIMIT else ""
        parts.append(Part(caption, outgoing.document))
        text = "" if caption else text
    if picture is not None:
        caption = _caption(text, picture)
        parts.append(Part(caption, picture))
        text = "" if caption != picture.says or text.strip() == caption else text
    parts += [Part(piece) for piece in split(text)]
    if parts:
        parts[-1] = replace(parts[-1], buttons=outgoing.reply.buttons)
    return parts


def size(enclosed: Picture | Document) -> int:
    """How many bytes are enclosed."""
    return len(enclosed.png if isinstance(enclosed, Picture) else enclosed.content)


def without(part: Part) -> Part:
    """The part in words alone, with those that stand for what it enclosed."""
    match part.enclosed:
        case Picture(says=instead) | Document(instead=instead) if instead not in part.text:
            return replace(part, text=split(f"{part.text}\n\n{instead}".strip())[0], enclosed=None)
    return replace(part, enclosed=None)


def _caption(text: str, picture: Picture) -> str:
    """Text and what the picture says where both fit under it, else only the latter."""
    both = text.strip() if picture.says in text else f"{text.strip()}\n\n{picture.says}".strip()
    if length(both) <= CAPTION_LIMIT:
        return both
    return split(picture.says, CAPTION_LIMIT)[0] if picture.says.strip() else ""


def keyboard(rows: tuple[tuple[Button, ...], ...]) -> api.InlineKeyboardMarkup | None:
    """Buttons under a message; one whose payload the API would refuse is left out, so that the text still arrives."""
    kept = [[button for button in row if _fits(button)] for row in rows]
    drawn = [[api.InlineKeyboardButton(each.label, callback_data=each.payload) for each in row] for row in kept if row]
    return api.InlineKeyboardMarkup(drawn) if drawn else None


def _fits(button: Button) -> bool:
    fits = 1 <= len(button.payload.encode()) <= PAYLOAD_LIMIT
    if not fits:
        log.error("a button was left out: its payload is not 1 to %s bytes long", PAYLOAD_LIMIT)
    return fits


def answering(outgoing: Outgoing) -> api.ReplyParameters | None:
    """In a group, the message that is answered: among several people it must be plain who is spoken to."""
    chat, _, number = (outgoing.answering or "").rpartition(":")
    if chat != outgoing.chat or not is_group(chat) or not number.isdecimal():
        return None
    return api.ReplyParameters(int(number), allow_sending_without_reply=True)
