"""The menu of commands: few, plain, the same in every language, and each works without its slash."""

import re
from datetime import UTC, datetime

import pytest

from bot.intents.context import Context
from bot.intents.intents import Question, Unclear
from bot.intents.read import read
from bot.wording.commands import MENUS

HERE = Context(datetime(2027, 9, 24, tzinfo=UTC), phase="curing", batch="b", batches=(("b", "flat"), ("c", "point")))
NAME = re.compile(r"[a-z0-9_]{1,32}")  # Bot API, BotCommand.command; a description has 1 to 256 characters


@pytest.mark.parametrize("menu", MENUS, ids=lambda menu: f"{menu[0]}-{menu[1]}")
def test_a_menu_is_short_and_allowed(menu: tuple[str | None, str, tuple[tuple[str, str], ...]]) -> None:
    """At most eight commands, each as the Bot API wants it."""
    assert len(menu[2]) <= 8
    assert all(NAME.fullmatch(name) and 1 <= len(said) <= 256 for name, said in menu[2])


def test_every_language_offers_the_same() -> None:
    """In each kind of chat both languages have the same commands, each in words of its own."""
    for chats in ("private", "group"):
        offered = [menu[2] for menu in MENUS if menu[1] == chats]
        assert len({tuple(name for name, _ in commands) for commands in offered}) == 1
        assert len({said for commands in offered for _, said in commands}) == sum(map(len, offered))


@pytest.mark.parametrize("name", sorted({name for menu in MENUS for name, _ in menu[2]}))
def test_it_works_with_and_without_the_slash(name: str) -> None:
    """«/plan», «/plan@somebot» and «plan» are one."""
    plain = read(name, HERE)
    assert not isinstance(plain[0], Question | Unclear)
    for typed in (f"/{name}", f"/{name}@house_bot"):
        found = read(typed, HERE)
        assert [type(one) for one in found] == [type(one) for one in plain]
        assert getattr(found[0], "topic", None) == getattr(plain[0], "topic", None)
