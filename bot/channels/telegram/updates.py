"""An Update of the Bot API as a Message of the house, or nothing where nobody spoke to us."""

import re
from dataclasses import dataclass
from datetime import datetime

import telegram as api

from bot.reply import Message

GROUPS = ("group", "supergroup")
# in this order: an animation carries a document too, a venue a location
UNREADABLE = (
    "animation", "audio", "document", "paid_media", "photo", "sticker", "story", "video", "video_note", "voice",
    "contact", "dice", "game", "poll", "venue", "location", "invoice", "successful_payment", "passport_data",
    "checklist",
)  # fmt: skip
MEMBERSHIPS = {"kicked": "blocked", "left": "blocked", "member": "added", "administrator": "added"}


@dataclass(frozen=True)
class Me:
    """Who the bot is: in a group only what names it or answers it is meant for it."""

    id: int
    username: str


def ref(chat: int, message: int) -> str:
    """The name by which a message is meant later: unique over all chats, as message numbers are not."""
    return f"{chat}:{message}"


def message_from(update: api.Update, me: Me, now: datetime) -> Message | None:
    """What was said, or None where it is nothing for us (a service notice, talk among others).

    Raises ValueError where the update is not as the Bot API describes it: the library passes such things on.
    """
    message = _message_from(update, me, now)
    if message is not None and not _is_sound(message):
        raise ValueError("an update lacks what it should have")
    return message


def _message_from(update: api.Update, me: Me, now: datetime) -> Message | None:
    key = f"tg:{update.update_id}"
    if update.callback_query is not None:
        return _pressed(update.callback_query, key, now)
    if update.my_chat_member is not None:
        return _membership(update.my_chat_member, key)
    if update.edited_message is not None:
        return _edited(update.edited_message, key, me)
    return None if update.message is None else _said(update.message, key, me)


def _is_sound(message: Message) -> bool:
    words = (message.text, message.name, message.pressed or "", message.language or "")
    numbers = (message.chat, message.person)
    return (
        isinstance(message.said_at, datetime)
        and all(isinstance(each, str) for each in words)
        and all(re.fullmatch(r"-?\d{1,19}", each) for each in numbers)
    )


def _said(said: api.Message, key: str, me: Me) -> Message | None:
    if said.migrate_to_chat_id is not None:
        return _message(said, key, text=str(said.migrate_to_chat_id), other="moved")
    text, other = said.text or said.caption or "", _unreadable(said)
    if not text and other is None:
        return None
    if said.chat.type in GROUPS and not _is_for(said, text, me):
        return None
    if said.location is not None:
        text = f"{said.location.latitude},{said.location.longitude}"
    return _message(said, key, text=_without_name(text, me), other=other)


def _edited(said: api.Message, key: str, me: Me) -> Message | None:
    # a live location is "edited" every few seconds, and nobody said anything
    if not (said.text or said.caption):
        return None
    return _said(said, key, me)


def _message(said: api.Message, key: str, text: str, other: str | None) -> Message:
    person, name, language = _speaker(said)
    own = ref(said.chat.id, said.message_id)
    earlier = said.reply_to_message
    return Message(
        key=key,
        chat=str(said.chat.id),
        person=person,
        name=name,
        said_at=said.date,
        text=text,
        edits=own if said.edit_date is not None else None,
        answers=ref(said.chat.id, earlier.message_id) if earlier is not None else None,
        other=other,
        language=language,
        in_group=said.chat.type in GROUPS,
        ref=own,
    )


def _speaker(said: api.Message) -> tuple[str, str, str | None]:
    """Id, name and language; an administrator who hides speaks as the group."""
    if said.sender_chat is not None:
        return str(said.sender_chat.id), said.sender_chat.title or "", None
    if said.from_user is None:
        return str(said.chat.id), said.chat.title or "", None
    return str(said.from_user.id), said.from_user.full_name, said.from_user.language_code


def _pressed(query: api.CallbackQuery, key: str, now: datetime) -> Message | None:
    if query.message is None or query.data is None:
        return None
    return Message(
        key=key,
        chat=str(query.message.chat.id),
        person=str(query.from_user.id),
        name=query.from_user.full_name,
        said_at=now,  # the Bot API does not say when a button was tapped
        pressed=query.data,
        answers=ref(query.message.chat.id, query.message.message_id),
        language=query.from_user.language_code,
        in_group=query.message.chat.type in GROUPS,
    )


def _membership(change: api.ChatMemberUpdated, key: str) -> Message | None:
    other = MEMBERSHIPS.get(change.new_chat_member.status)
    if other is None:
        return None
    return Message(
        key=key,
        chat=str(change.chat.id),
        person=str(change.from_user.id),
        name=change.from_user.full_name,
        said_at=change.date,
        other=other,
        language=change.from_user.language_code,
        in_group=change.chat.type in GROUPS,
    )


def _unreadable(said: api.Message) -> str | None:
    return next((kind for kind in UNREADABLE if getattr(said, kind, None)), None)


def _is_for(said: api.Message, text: str, me: Me) -> bool:
    """Whether a message in a group is meant for the bot, by the rules of privacy mode."""
    command = re.match(r"/\w+(@\w+)?", text)
    if command:
        return command[1] is None or command[1].lower() == f"@{me.username}".lower()
    earlier = said.reply_to_message
    if earlier is not None and earlier.from_user is not None and earlier.from_user.id == me.id:
        return True
    return _name(me).search(text) is not None


def _without_name(text: str, me: Me) -> str:
    if "@" not in text:
        return text
    return re.sub(r"[ \t]{2,}", " ", _name(me).sub("", text)).strip()


def _name(me: Me) -> re.Pattern[str]:
    return re.compile(rf"@{re.escape(me.username)}\b", re.IGNORECASE)
