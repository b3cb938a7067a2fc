"""What is said reaches the house once, and its reply reaches the chat once: by polling and by webhook."""

from bot.channels.telegram.channel import Telegram
from tests.telegram.echo_house import EchoHouse
from tests.telegram.loopback import BotApi


async def test_a_text_is_answered_by_polling(server: BotApi, polling: Telegram, house: EchoHouse) -> None:
    """A text comes in with who, where and when, and its reply goes out to the same chat."""
    ida = server.person("Ida", language="de")
    ida.says("158")

    sent = await server.reaches(ida.chat, 1)

    assert [each.text for each in sent] == ["158"]
    assert (str(ida.chat), "Ida", "de") == (
        house.received[0].person,
        house.received[0].name,
        house.received[0].language,
    )


async def test_a_text_is_answered_by_webhook(server: BotApi, webhook: Telegram, house: EchoHouse) -> None:
    """The same by webhook, and the update is confirmed by 200."""
    ida = server.person("Ida")
    ida.says("158")

    sent = await server.reaches(ida.chat, 1)
    await server.until(lambda: not server.pending)

    assert [each.text for each in sent] == ["158"]
    assert server.webhook.statuses == [200]
