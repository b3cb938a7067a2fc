"""A reply as calls of the Bot API: its limits kept, its parts in order, its buttons under the last."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from bot.channels.telegram import sending
from bot.channels.telegram.channel import Manners, Telegram
from bot.reply import Button, Document, Kind, Outgoing, Picture, Reply
from core.errors import NotDelivered
from tests.telegram.conftest import door
from tests.telegram.loopback import BotApi

PNG = b"\x89PNG\r\n\x1a\n" + bytes(range(256))
NOW = datetime(2027, 3, 1, 8, tzinfo=UTC)
SAYS = "The core is at 70 °C and rises."
BUTTONS = ((Button("Done", "v1:done:b1"), Button("Later", "v1:later:b1")), (Button("Undo", "v1:undo:b1"),))


RECORD = Document(b"%PDF-1.7 a record", "record-flat.pdf", "Ask for a smaller one.")


def outgoing(
    chat: int, text: str, picture: Picture | None = None, answering: str | None = None, **reply: object
) -> Outgoing:
    said = Reply(text, **reply)  # type: ignore[arg-type]
    return Outgoing(f"{chat} {text[:20]}", str(chat), NOW, said, picture, answering=answering)


async def test_text_and_buttons(server: BotApi, polling: Telegram) -> None:
    """Text, rows of buttons, and the key that names the message."""
    ida = server.person("Ida")

    key = await polling.send(outgoing(ida.chat, "Flip it.", buttons=BUTTONS))

    sent = server.to(ida.chat)[0]
    assert key == f"{ida.chat}:{sent.message_id}"
    assert (sent.text, sent.quiet) == ("Flip it.", False)
    assert sent.buttons == (("Done", "v1:done:b1"), ("Later", "v1:later:b1"), ("Undo", "v1:undo:b1"))


async def test_a_quiet_reply_makes_no_sound(server: BotApi, polling: Telegram) -> None:
    """A flip at night does not ring."""
    ida = server.person("Ida")
    await polling.send(outgoing(ida.chat, "Flip it.", quiet=True))

    assert server.to(ida.chat)[0].quiet


async def test_a_long_text_is_split(server: BotApi, polling: Telegram) -> None:
    """In parts of at most 4,096, in order, the buttons and the key on the last."""
    ida = server.person("Ida")
    text = "Rinse it in cold water for a minute. " * 400

    key = await polling.send(outgoing(ida.chat, text, buttons=BUTTONS))

    sent = server.to(ida.chat)
    assert [len(each.buttons) for each in sent] == [0] * (len(sent) - 1) + [3]
    assert key == f"{ida.chat}:{sent[-1].message_id}"
    assert " ".join(each.text for each in sent) == text.strip()
    assert len(sent) == 4


async def test_a_picture_carries_its_text(server: BotApi, polling: Telegram) -> None:
    """The PNG arrives unchanged; under it the text and the sentence that says the same as the picture."""
    ida = server.person("Ida")
    await polling.send(outgoing(ida.chat, "Wrap it now.", Picture(PNG, SAYS, "cook.png"), buttons=BUTTONS))

    sent = server.to(ida.chat)
    assert [(each.photo, each.text, len(each.buttons)) for each in sent] == [(PNG, f"Wrap it now.\n\n{SAYS}", 3)]


async def test_a_sentence_is_not_said_twice(server: BotApi, polling: Telegram) -> None:
    """Where the text says already what the picture says, it is enough."""
    ida = server.person("Ida")
    await polling.send(outgoing(ida.chat, f"Wrap it. {SAYS}", Picture(PNG, SAYS, "cook.png")))

    assert [each.text for each in server.to(ida.chat)] == [f"Wrap it. {SAYS}"]


async def test_a_long_caption_becomes_a_message(server: BotApi, polling: Telegram) -> None:
    """Over 1,024 the picture goes first with its sentence, then the whole text with the buttons."""
    ida = server.person("Ida")
    text = ("Wrap it in two layers of foil. " * 50).strip()
    await polling.send(outgoing(ida.chat, text, Picture(PNG, SAYS, "cook.png"), buttons=BUTTONS))

    photo, message = server.to(ida.chat)
    assert (photo.photo, photo.text, photo.buttons) == (PNG, SAYS, ())
    assert (message.photo, message.text, len(message.buttons)) == (None, text, 3)


def filed(chat: int, text: str, document: Document = RECORD) -> Outgoing:
    return Outgoing(f"{chat} filed", str(chat), NOW, Reply(text, BUTTONS), document=document)


async def test_a_document_arrives_as_a_file(server: BotApi, polling: Telegram) -> None:
    """Its bytes and its name unchanged, the text under it, and the buttons; it is no picture."""
    ida = server.person("Ida")
    await polling.send(filed(ida.chat, "Keep this record."))

    (sent,) = server.to(ida.chat)
    assert sent.document is not None
    assert (sent.document.name, sent.document.content) == (RECORD.name, RECORD.content)
    assert (sent.text, len(sent.buttons), sent.photo) == ("Keep this record.", 3, None)


async def test_a_long_text_follows_its_document(server: BotApi, polling: Telegram) -> None:
    """Over 1,024 the file goes first and the whole text after it, with the buttons."""
    ida = server.person("Ida")
    text = ("Keep this record in a dry place. " * 50).strip()
    await polling.send(filed(ida.chat, text))

    file, message = server.to(ida.chat)
    assert (file.document is not None, file.text, file.buttons) == (True, "", ())
    assert (message.document, message.text, len(message.buttons)) == (None, text, 3)


async def test_a_document_that_is_refused_leaves_its_words(
    server: BotApi, polling: Telegram, caplog: pytest.LogCaptureFixture
) -> None:
    """The API takes no such file: the text still arrives, with what to do instead, and the keeper is told."""
    ida = server.person("Ida")
    server.fail("sendDocument", status=400, description="Bad Request: wrong file")
    key = await polling.send(filed(ida.chat, "Keep this record."))

    (sent,) = server.to(ida.chat)
    assert (sent.text, sent.document, len(sent.buttons)) == ("Keep this record.\n\nAsk for a smaller one.", None, 3)
    assert key == f"{ida.chat}:{sent.message_id}"
    assert "a file was left out" in caplog.text


async def test_a_picture_that_is_refused_leaves_its_words(server: BotApi, polling: Telegram) -> None:
    """As with a document: the sentence that says the same as the picture is what is left."""
    ida = server.person("Ida")
    await polling.send(outgoing(ida.chat, "Wrap it now.", Picture(b"no picture", SAYS, "cook.png"), buttons=BUTTONS))

    (sent,) = server.to(ida.chat)
    assert (sent.text, sent.photo, len(sent.buttons)) == (f"Wrap it now.\n\n{SAYS}", None, 3)


async def test_a_file_over_the_limit_is_not_even_tried(
    server: BotApi, polling: Telegram, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Fifty megabytes are the most that the Bot API takes: a larger file is not sent, and words come instead."""
    assert {kind.__name__: most for kind, most in sending.UPLOAD_LIMIT.items()} == {
        "Picture": 10_000_000,
        "Document": 50_000_000,
    }
    monkeypatch.setitem(sending.UPLOAD_LIMIT, Document, len(RECORD.content) - 1)
    ida = server.person("Ida")
    await polling.send(filed(ida.chat, "Keep this record."))

    assert [each.text for each in server.to(ida.chat)] == ["Keep this record.\n\nAsk for a smaller one."]
    assert server.count("sendDocument") == 0


@pytest.mark.parametrize("status", [500, 502])
async def test_a_file_whose_fate_is_open_is_tried_again_as_a_file(
    server: BotApi, polling: Telegram, status: int
) -> None:
    """The API is down: nothing goes out in its place, the outbox tries once more; only 502 may have arrived."""
    ida = server.person("Ida")
    server.fail("sendDocument", status=status)
    with pytest.raises(NotDelivered) as trouble:
        await polling.send(filed(ida.chat, "Keep this record."))
    assert trouble.value.after is not None
    assert trouble.value.uncertain is (status == 502)
    assert server.to(ida.chat) == []
    await polling.send(filed(ida.chat, "Keep this record."))
    assert [each.document is not None for each in server.to(ida.chat)] == [True]


async def test_a_payload_over_64_bytes_is_left_out(
    server: BotApi, polling: Telegram, caplog: pytest.LogCaptureFixture
) -> None:
    """A button that the API would refuse does not take the sentence down with it, and the keeper is told."""
    ida = server.person("Ida")
    rows = ((Button("Good", "ü" * 32), Button("Bad", "ü" * 32 + "x")),)
    await polling.send(outgoing(ida.chat, "Flip it.", buttons=rows))

    assert server.to(ida.chat)[0].buttons == (("Good", "ü" * 32),)
    assert "a button was left out" in caplog.text


async def test_an_answer_in_a_group_names_its_message(server: BotApi, polling: Telegram) -> None:
    """Among several people the bot answers a message; alone with one it does not quote them back."""
    ida, group = server.person("Ida"), server.group("Harvest supper")
    ida.says("/plan", group)
    await polling.send(outgoing(group.id, "Flip it.", answering=f"{group.id}:{ida.last}"))
    await polling.send(outgoing(ida.chat, "Flip it.", answering=f"{ida.chat}:{ida.last}"))
    await polling.send(outgoing(group.id, "Flip it again.", answering="tg:1"))

    # the bot's own answer to /plan may come in between
    answering = {(sent.chat, sent.text): sent.answering for sent in (*server.to(group.id), *server.to(ida.chat))}
    assert answering[group.id, "Flip it."] == ida.last
    assert answering[ida.chat, "Flip it."] is None
    assert answering[group.id, "Flip it again."] is None


async def test_nothing_to_say_is_given_up(server: BotApi, polling: Telegram) -> None:
    """An empty reply is not sent and not tried again."""
    ida = server.person("Ida")

    with pytest.raises(NotDelivered) as trouble:
        await polling.send(outgoing(ida.chat, " \n"))

    assert (trouble.value.after, server.count("sendMessage")) == (None, 0)


@pytest.mark.parametrize("kind", ["reply", "reminder", "alert"])
async def test_every_kind_arrives(kind: Kind, server: BotApi, polling: Telegram) -> None:
    """Replies, reminders and alerts all go out."""
    ida = server.person("Ida")
    await polling.send(outgoing(ida.chat, "Flip it.", kind=kind))

    assert len(server.to(ida.chat)) == 1


async def test_a_reply_goes_on_where_it_was_broken_off(server: BotApi, polling: Telegram) -> None:
    """The second part fails: the next try sends from there, so the first is not said twice."""
    ida = server.person("Ida")
    long = outgoing(ida.chat, "Rinse it in cold water. " * 300, buttons=BUTTONS)
    server.fail("sendMessage", chat=ida.chat, skip=1)
    with pytest.raises(NotDelivered):
        await polling.send(long)
    assert len(server.to(ida.chat)) == 1
    await polling.send(long)

    sent = server.to(ida.chat)
    assert " ".join(each.text for each in sent) == long.reply.text.strip()
    assert [len(each.buttons) for each in sent] == [0, 3]


@pytest.mark.parametrize(("left", "goes"), [(-1, False), (60, False), (90, True)])
async def test_what_is_ours_no_longer_is_not_sent(server: BotApi, left: float, goes: bool) -> None:
    """Stopped or asleep with a message in hand: a call that might not end while it is ours is not begun.

    A call takes 70 s at most: 10 to connect, 30 to hand over, 30 to be answered.
    """
    ida, channel = server.person("Ida"), door(server, Manners(now=lambda: NOW))
    late = replace(outgoing(ida.chat, "Flip it."), until=NOW + timedelta(seconds=left))
    if goes:
        await channel.send(late)
    else:
        with pytest.raises(NotDelivered) as trouble:
            await channel.send(late)
        assert (trouble.value.after, trouble.value.paced, trouble.value.uncertain) == (timedelta(0), True, False)
    await channel.close()
    assert server.count("sendMessage") == int(goes)
