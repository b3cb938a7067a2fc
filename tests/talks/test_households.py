"""A batch that several people have: in two private chats by an invitation, in a group by name; the walls hold."""

from collections.abc import AsyncIterator
from pathlib import Path
from typing import Any

import pytest

from bot.intents.buttons import payload
from bot.intents.intents import StepDone
from tests.talks.player import Player

MARTA: dict[str, Any] = {"chat": "marta", "person": "marta", "name": "Marta"}
BO: dict[str, Any] = {"chat": "bo", "person": "bo", "name": "Bo"}
EVE: dict[str, Any] = {"chat": "eve", "person": "eve", "name": "Eve"}
FLAT = "3.2 kg brisket flat for 2 october 13:00, 48 mm, cure is 6.25 %"


class House:
    """Several private chats on one store."""

    def __init__(self, player: Player) -> None:
        self.player = player

    async def says(self, who: dict[str, Any], text: str, **more: Any) -> list[dict[str, Any]]:
        """Somebody says something; all that the bot sent then."""
        return await self.player.send(**who, text=text, **more)

    async def until(self, at: str) -> list[dict[str, Any]]:
        """The clock moves on; what fell due."""
        return await self.player.play(f"@{at}")

    async def invited(self, line: str = "invite") -> str:
        """The code of an invitation by Marta."""
        (said,) = await self.says(MARTA, line)
        return str(said["facts"]["invitation"])


@pytest.fixture
async def house(tmp_path: Path) -> AsyncIterator[House]:
    """Marta has begun a flat on Thursday evening."""
    found = House(Player(tmp_path))
    await found.says(MARTA, FLAT)
    yield found
    found.player.restart()


def to(said: list[dict[str, Any]], who: dict[str, Any]) -> list[str]:
    """What was sent to somebody."""
    return [one["text"] for one in said if one["to"] == who["chat"]]


async def test_who_is_invited_gets_the_calls_and_may_answer_them(house: House) -> None:
    """Both are called; the first «done» closes it for both and says who; the other is told."""
    joined = await house.says(BO, f"join {await house.invited()}")
    assert "You have «flat» with Marta now." in to(joined, BO)[0]
    assert to(joined, MARTA) == ["Bo is in on «flat» now."]
    done = await house.says(BO, "made the brine")
    assert to(done, BO)[0].startswith("Make the brine: done 18:00.")
    assert to(done, MARTA) == ["Bo (flat): Make the brine: done 18:00."]
    morning = await house.until("2027-09-24T07:05")
    assert to(morning, MARTA) == to(morning, BO) != []
    await house.says(MARTA, "brine 3 c")
    assert to(await house.says(BO, "meat is in"), MARTA) == ["Bo (flat): Meat into the cure: done 07:05."]
    assert "Bo did it." in to(await house.says(MARTA, "meat is in"), MARTA)[0]
    evening = await house.until("2027-09-24T20:01")
    assert len(to(evening, MARTA)) == len(to(evening, BO)) == 1
    await house.says(MARTA, "flipped")
    assert "was noted already" in to(await house.says(BO, "flipped"), BO)[0]
    assert "Marta did it." in to(await house.says(BO, "flipped"), BO)[0]


async def test_nobody_doses_twice(house: House) -> None:
    """One person weighs the cure; who comes second is refused, with who did it and when."""
    await house.says(BO, f"join {await house.invited()}")
    assert to(await house.says(BO, "dose"), BO)[0].startswith("Marta weighs the cure, nobody else does.\nDose:")
    assert to(await house.says(MARTA, "bo weighs the cure"), BO) == ["Bo weighs the cure of «flat», nobody else does."]
    await house.says(BO, "made the brine")
    second = to(await house.says(MARTA, "made the brine"), MARTA)[0]
    assert "The cure is in since 18:00, by Bo: weigh no second one." in second
    assert "by Bo: weigh no second one" in to(await house.says(MARTA, "dose"), MARTA)[0]


async def test_the_call_for_the_cure_says_whose_it_is(house: House) -> None:
    """Where two have the batch, the reminder to make the brine names the one who weighs."""
    code = await house.invited()
    (asked,) = await house.says(MARTA, "remind me at 19:00")
    assert "19:00" in asked["text"]
    await house.says(BO, f"join {code}")
    called = await house.until("2027-09-23T19:01")
    assert all("Marta weighs the cure, nobody else does." in text for text in to(called, BO) + to(called, MARTA))
    assert to(called, BO)
    assert to(called, MARTA)


async def test_the_fire_is_handed_over(house: House) -> None:
    """«Jo has the fire from 20:00»: an invitation where Jo is not in; then the calls of the fire go there alone."""
    code = await house.invited("bo has the fire from friday 7:00")
    taken = await house.says(BO, f"join {code}")
    assert "You answer for the fire and the chill from tomorrow 07:00" in to(taken, BO)[0]
    assert "Bo answers for the fire and the chill of «flat» from tomorrow 07:00." in to(taken, MARTA)
    for line in ("made the brine", "brine 3 c", "meat is in"):
        await house.says(MARTA, line)
    evening = await house.until("2027-09-24T20:01")
    assert to(evening, MARTA)
    assert to(evening, BO)
    await house.until("2027-09-30T17:05")
    await house.says(MARTA, "its out, rinsed and dried")
    fire = await house.until("2027-10-01T07:05")
    assert [text for text in to(fire, BO) if "Light the fire" in text]
    assert not [text for text in to(fire, MARTA) if "Light the fire" in text]
    back = await house.says(MARTA, "i have the fire")
    assert "Marta answers for the fire and the chill" in to(back, BO)[0]


async def test_a_safety_call_that_nobody_answers_goes_to_everybody(house: House) -> None:
    """The repeat of a piercing step goes to all, whoever has the fire."""
    await house.says(BO, f"join {await house.invited('bo has the fire')}")
    for line in ("made the brine", "brine 3 c", "meat is in"):
        await house.says(MARTA, line)
    await house.until("2027-09-30T17:05")
    await house.says(MARTA, "its out, rinsed and dried")
    await house.until("2027-10-01T08:02")
    await house.says(BO, "meat is on")
    await house.says(BO, "its off the fire")
    later = await house.until("2027-10-01T23:30")
    chill = [text for text in to(later, MARTA) if "chill" in text.lower() or "ice" in text.lower()]
    assert chill
    assert to(later, BO)


async def test_an_invitation_opens_once(house: House) -> None:
    """A used code, a wrong one and one of a batch that is over get the same answer, which names no batch."""
    code = await house.invited()
    await house.says(BO, f"join {code}")
    answers = {to(await house.says(EVE, f"join {c}"), EVE)[0] for c in (code, "2222222222")}
    late = await house.invited()
    await house.says(MARTA, "cancel")
    await house.says(MARTA, "yes")
    answers |= set(to(await house.says(EVE, f"join {late}"), EVE))
    assert len(answers) == 1
    assert "flat" not in answers.pop()


async def test_an_invitation_grows_old(house: House) -> None:
    """After seven days it opens nothing."""
    code = await house.invited()
    await house.until("2027-10-01T19:00")
    assert "opens nothing" in to(await house.says(BO, f"join {code}"), BO)[0]


async def test_who_leaves_sees_nothing_more(house: House) -> None:
    """After «leave» neither words nor buttons reach the batch, no call comes, and what was taken over goes back."""
    joined = await house.says(BO, f"join {await house.invited('bo has everything')}")
    batch = next(one["facts"]["batch"] for one in joined if one["to"] == "bo")
    left = await house.says(BO, "leave")
    assert to(left, BO)[0].startswith("You are out of «flat»")
    assert "Bo is out of «flat»" in to(left, MARTA)[0]
    assert "brisket" not in "".join(to(await house.says(BO, "plan"), BO)).replace("«3.2 kg brisket flat for", "")
    tapped = await house.player.send(**BO, pressed=payload(StepDone("brine", batch=batch)))
    assert "Make the brine: done" not in tapped[0]["text"]
    later = await house.until("2027-09-23T22:30")
    assert to(later, BO) == []


async def test_forgetting_a_member_takes_them_out(house: House) -> None:
    """«forget me» of somebody who was invited: out of the batch of others too."""
    await house.says(BO, f"join {await house.invited()}")
    await house.says(BO, "forget me")
    await house.says(BO, "yes, forget me")
    await house.player.send(**BO, pressed="v1|o||forget~b1")
    assert "flat" not in "".join(to(await house.says(BO, "what now"), BO)).replace("«3.2 kg brisket flat for", "")


async def test_nobody_else_sees_it(house: House) -> None:
    """While two have it, a third has not: words, buttons and replies of theirs find nothing."""
    joined = await house.says(BO, f"join {await house.invited()}")
    batch = next(one["facts"]["batch"] for one in joined if one["to"] == "bo")
    tapped = await house.player.send(**EVE, pressed=payload(StepDone("brine", batch=batch)))
    none = await house.player.send(**EVE, pressed=payload(StepDone("brine", batch="nobodys1")))
    assert [one["text"] for one in tapped] == [one["text"] for one in none]
    assert to(await house.says(EVE, "who is in"), EVE)[0] == to(await house.says(EVE, "who is in"), EVE)[0]
    assert "Bo" not in "".join(to(await house.says(EVE, "who is in"), EVE))
    (now,) = await house.says(MARTA, "what now")
    assert now["text"].startswith("Make the brine:")


async def test_two_flats_are_told_apart(house: House) -> None:
    """Who has a flat of their own and joins another: the name says whose."""
    await house.says(BO, FLAT)
    await house.says(BO, f"join {await house.invited()}")
    (listed,) = await house.says(BO, "batches")
    assert "flat marta" in listed["text"].lower()
    done = await house.says(BO, "flat marta: made the brine")
    assert to(done, MARTA) == ["Bo (flat): Make the brine: done 18:00."]


async def test_in_a_group_a_name_is_called(house: House) -> None:
    """In a group nobody has to be invited: the call of the fire begins with the name."""
    group = {"chat": "-100", "in_group": True}
    ida, jo = {"person": "ida", "name": "Ida"}, {"person": "jo", "name": "Jo Ann"}
    await house.says({**ida, **group}, FLAT)
    (handed,) = await house.says({**ida, **group}, "jo has the flips")
    assert handed["text"].startswith("Noted: Jo answers for flips and fridge")
    for line in ("made the brine", "brine 3 c", "meat is in"):
        await house.says({**jo, **group}, line)
    evening = [one["text"] for one in await house.until("2027-09-24T20:01") if one["to"] == "-100"]
    assert evening
    assert evening[0].startswith("Jo: ")
    (now,) = await house.says({**ida, **group}, "who is in")
    assert "In on «flat»: Ida, Jo Ann." in now["text"]


async def test_who_is_away_rests_alone(house: House) -> None:
    """Marta is away: Bo is called as ever, also for what she handed to him; she is not, until she is back."""
    await house.says(BO, f"join {await house.invited()}")
    for line in ("made the brine", "brine 3 c", "meat is in"):
        await house.says(MARTA, line)
    away = await house.says(MARTA, "away until sunday 9:00")
    assert "Let somebody read the fridge" in to(away, MARTA)[0]
    two_days = await house.until("2027-09-25T21:00")
    assert to(two_days, MARTA) == []
    assert sum("Flip the bag" in text for text in to(two_days, BO)) >= 3
    handed = await house.says(MARTA, "bo does the flips")
    assert "Bo answers for flips and fridge" in to(handed, MARTA)[0]
    third = await house.until("2027-09-26T08:30")
    assert to(third, MARTA) == []
    assert any("Flip the bag" in text for text in to(third, BO))


async def test_where_all_are_away_all_rest(house: House) -> None:
    """A second pause of somebody else holds for both; a group that goes away has no chat of its own for one of them."""
    await house.says(BO, f"join {await house.invited()}")
    for line in ("made the brine", "brine 3 c", "meat is in"):
        await house.says(MARTA, line)
    await house.says(MARTA, "away until sunday 9:00")
    await house.says(BO, "away until sunday 9:00")
    assert await house.until("2027-09-26T08:30") == []
    assert to(await house.until("2027-09-26T20:30"), BO)
