"""An Update becomes a Message: who, where, when, what, and nothing of what was not meant for us."""

from datetime import UTC, datetime

import pytest

from bot.channels.telegram.channel import Telegram
from bot.reply import Button
from tests.telegram.echo_house import EchoHouse
from tests.telegram.loopback import BotApi

DONE = ((Button("Done", "v1:done:b1"), Button("Later", "v1:later:b1")),)


async def test_said_at_is_the_time_of_sending(server: BotApi, polling: Telegram, house: EchoHouse) -> None:
    """A reading that waited while the bot was away keeps the time at which it was sent."""
    ida = server.person("Ida")
    ida.sends(text="158", date=1_800_000_000)

    await server.reaches(ida.chat, 1)

    assert house.received[0].said_at == datetime.fromtimestamp(1_800_000_000, UTC)


async def test_an_edit_names_the_message_it_changes(server: BotApi, polling: Telegram, house: EchoHouse) -> None:
    """An edited message is a new message that says which one it changes, and is taken once."""
    ida = server.person("Ida")
    ida.says("158")
    await server.reaches(ida.chat, 1)
    ida.edits("185")

    sent = await server.reaches(ida.chat, 2)

    first, second = house.received
    assert [each.text for each in sent] == ["158", "185"]
    assert (first.edits, second.edits) == (None, first.ref)
    assert first.key != second.key


async def test_a_tap_carries_its_payload_and_is_answered(server: BotApi, polling: Telegram, house: EchoHouse) -> None:
    """A tap brings the button's payload and the message it stood under; the wheel on the button stops."""
    house.buttons = DONE
    ida = server.person("Ida")
    ida.says("plan")
    shown = await server.reaches(ida.chat, 1)
    ida.taps("Done")
    await server.reaches(ida.chat, 2)
    await server.until(lambda: len(server.taps_answered) == 1)

    tapped = house.received[1]
    assert (tapped.pressed, tapped.text) == ("v1:done:b1", "")
    assert tapped.answers == f"{ida.chat}:{shown[0].message_id}" == house.keys[f"re {house.received[0].key}"]


async def test_a_button_pressed_twice_is_two_messages(server: BotApi, polling: Telegram, house: EchoHouse) -> None:
    """The door hands in both taps, each with its own key, and answers both: what a second one means is the house's."""
    house.buttons = DONE
    ida = server.person("Ida")
    ida.says("plan")
    await server.reaches(ida.chat, 1)
    ida.taps("Done")
    ida.taps("Done")
    await server.reaches(ida.chat, 3)
    await server.until(lambda: len(server.taps_answered) == 2)

    assert [each.pressed for each in house.received[1:]] == ["v1:done:b1", "v1:done:b1"]
    assert len({each.key for each in house.received}) == 3


@pytest.mark.parametrize("kind", ["photo", "sticker", "voice"])
async def test_what_cannot_be_read_is_named(kind: str, server: BotApi, polling: Telegram, house: EchoHouse) -> None:
    """A photo nobody asked for, a sticker, a voice message: the house is told what it was."""
    ida = server.person("Ida")
    getattr(ida, kind)()

    sent = await server.reaches(ida.chat, 1)

    assert (house.received[0].other, house.received[0].text) == (kind, "")
    assert [each.text for each in sent] == [f"[{kind}]"]


async def test_a_caption_is_text(server: BotApi, polling: Telegram, house: EchoHouse) -> None:
    """What stands under a photo was said."""
    ida = server.person("Ida")
    ida.photo(caption="158 on the probe")
    await server.reaches(ida.chat, 1)

    assert (house.received[0].other, house.received[0].text) == ("photo", "158 on the probe")


async def test_a_location_is_told_as_numbers(server: BotApi, polling: Telegram, house: EchoHouse) -> None:
    """A shared location comes with its latitude and longitude; its later moves are not messages."""
    ida = server.person("Ida")
    ida.sends(location={"latitude": 48.2, "longitude": 16.37, "live_period": 900})
    await server.reaches(ida.chat, 1)
    moved = server.chats.open(ida.chat).messages[ida.last] | {"edit_date": 1_800_000_000}
    server.bring("edited_message", moved)
    await server.until(lambda: not server.pending)

    assert [(each.other, each.text) for each in house.received] == [("location", "48.2,16.37")]


async def test_an_answer_names_what_it_answers(server: BotApi, polling: Telegram, house: EchoHouse) -> None:
    """A reply to a message of ours carries the key under which `send` returned it."""
    ida = server.person("Ida")
    ida.says("two batches")
    first = (await server.reaches(ida.chat, 1))[0]
    ida.says("158", answering=first.message_id)
    await server.reaches(ida.chat, 2)

    assert house.received[1].answers == house.keys[f"re {house.received[0].key}"]


async def test_a_group_with_privacy(server: BotApi, polling: Telegram, house: EchoHouse) -> None:
    """In a group the bot hears commands, mentions and replies to it, without its own name in them."""
    ida, group = server.person("Ida"), server.group("Harvest supper")
    for text in ("who brings bread?", "/done@saltbell_bot now", "@saltbell_bot 158", "/plan", "/plan@another_bot"):
        ida.says(text, group)
    sent = await server.reaches(group.id, 3)
    ida.says("yes", group, answering=sent[0].message_id)
    await server.reaches(group.id, 4)

    assert [each.text for each in house.received] == ["/done now", "158", "/plan", "yes"]
    assert {each.in_group for each in house.received} == {True}
    assert {each.chat for each in house.received} == {str(group.id)}


async def test_a_group_without_privacy(server: BotApi, polling: Telegram, house: EchoHouse) -> None:
    """Where the bot is brought all that is said in a group, it still takes only what is meant for it."""
    server.privacy = False
    ida, group = server.person("Ida"), server.group("Harvest supper")
    for text in ("who brings bread?", "/plan@another_bot", "158 @saltbell_bot", "mail me at ida@saltbell_bottle"):
        ida.says(text, group)
    await server.until(lambda: not server.pending)
    await server.reaches(group.id, 1)

    assert [each.text for each in house.received] == ["158"]


async def test_a_hidden_administrator_speaks_as_the_group(server: BotApi, polling: Telegram, house: EchoHouse) -> None:
    """Several people who hide behind a group are never taken for one private person."""
    ida, group = server.person("Ida"), server.group("Harvest supper")
    ida.sends(group=group, text="/plan", sender_chat=group.about)
    await server.reaches(group.id, 1)

    assert (house.received[0].person, house.received[0].name) == (str(group.id), "Harvest supper")


async def test_blocked_and_back(server: BotApi, polling: Telegram, house: EchoHouse) -> None:
    """Who blocks the bot is known at once, not at the next reminder."""
    ida = server.person("Ida")
    ida.blocks()
    await server.until(lambda: len(house.received) == 1)

    assert house.received[0].other == "blocked"
    assert house.received[0].chat == str(ida.chat)


async def test_a_group_moves(server: BotApi, polling: Telegram, house: EchoHouse) -> None:
    """A group that becomes a supergroup tells its new number once."""
    ida, group = server.person("Ida"), server.group("Harvest supper")
    bigger = ida.upgrades(group)
    await server.until(lambda: not server.pending)

    assert [(each.chat, each.other, each.text) for each in house.received] == [(str(group.id), "moved", str(bigger.id))]


async def test_oddities_are_confirmed_and_passed_over(
    server: BotApi, polling: Telegram, house: EchoHouse, caplog: pytest.LogCaptureFixture
) -> None:
    """What cannot be read is confirmed, said in the log without its content, and holds nobody up."""
    ida = server.person("Ida")
    server.bring("message", {"text": "a secret", "chat": {"id": 1}})
    server.bring("message", "a secret")
    server.bring("message", None)
    server.bring("callback_query", {"id": "1", "from": "a secret"})
    ida.sends(text="a secret", date="a secret")
    server.allowed = None
    server.bring("something_new", {"a": "secret"})
    ida.says("158")
    await server.reaches(ida.chat, 1)
    await server.until(lambda: not server.pending)

    assert [each.text for each in house.received] == ["158"]
    assert "cannot be read" in caplog.text
    assert "secret" not in caplog.text
